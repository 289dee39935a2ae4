#!/bin/sh
# outcome_or_run_cases SCRIPT FOLDER: holds tests/outcome_or_run against the lines that GoogleTest prints,
# with a program that says "ran alone" and passes, whatever it is asked.
set -eu
script=$1
folder=$2
rm -rf "$folder"
mkdir -p "$folder/outcomes"
printf '#!/bin/sh\necho "ran alone"\n' >"$folder/program"
chmod +x "$folder/program"
cat >"$folder/outcomes/half0.log" <<'E2'
[ RUN      ] Pack.WeighsTen
[       OK ] Pack.WeighsTen (0 ms)
[ RUN      ] Pack.WeighsTenAndMore
[  FAILED  ] Pack.WeighsTenAndMore (3 ms)
[ RUN      ] All/Legs.Add/1
[  FAILED  ] All/Legs.Add/1, where GetParam() = 7 (0 ms)
[ RUN      ] All/Legs.Add/11
[       OK ] All/Legs.Add/11 (0 ms)
E2
cat >"$folder/outcomes/half1.log" <<'E2'
no line break before [       OK ] Legs.Add/1 (0 ms)
[ RUN      ] Legs.Cut
[  SKIPPED ] Legs.Cut (0 ms)
[ RUN      ] Legs.Crash
E2
"${script%/*}/outcomes_apart" "$folder/outcomes"

# expect NAME STATUS WORDS: the script ends with STATUS and prints WORDS.
expect() {
    status=0
    printed=$(TUMPLINE_OUTCOMES=$folder/outcomes "$script" "$folder/program" "--gtest_filter=$1" x 2>&1) || status=$?
    case $status:$printed in
    "$2":*"$3"*) ;;
    *)
        printf '%s: expected %s and "%s", found %s and "%s"\n' "$1" "$2" "$3" "$status" "$printed"
        exit 1
        ;;
    esac
}

expect Pack.WeighsTen 0 "[       OK ] Pack.WeighsTen (0 ms)"
expect Pack.WeighsTenAndMore 1 "failed in the run of all tests"
expect Pack.WeighsTenAndMore 1 "ran alone"
expect All/Legs.Add/1 1 "failed in the run of all tests"
expect All/Legs.Add/11 0 "[       OK ] All/Legs.Add/11 (0 ms)"
expect Legs.Add/1 0 "[       OK ] Legs.Add/1 (0 ms)"
expect Legs.Cut 0 "[  SKIPPED ] Legs.Cut (0 ms)"
expect Legs.Crash 0 "ran alone"
expect Legs.Add 0 "ran alone"
unset TUMPLINE_OUTCOMES
[ "$("$script" "$folder/program" --gtest_filter=Pack.WeighsTen)" = "ran alone" ]
[ "$("$script" "$folder/program" --gtest_list_tests)" = "ran alone" ]
