#!/usr/bin/env bash
# The program as people and scripts run it. Usage: run.sh PROGRAM SOURCE_DIR
set -u
program=$1 source=$2
export RETORT_RUBRICS=$source/rubrics
work=$(mktemp -d)
trap 'chmod -R u+w "$work"; rm -rf "$work"' EXIT
tests=0 failed=0

# expect NAME STATUS PATTERN-IN-STDERR PATTERN-IN-STDOUT COMMAND...
expect() {
  local name=$1 status=$2 err=$3 out=$4
  shift 4
  tests=$((tests + 1))
  timeout 120 "$@" >"$work/.out" 2>"$work/.err" </dev/null
  local got=$?
  if [ "$got" != "$status" ] || { [ -n "$err" ] && ! grep -qE -- "$err" "$work/.err"; } || { [ -n "$out" ] && ! grep -qE -- "$out" "$work/.out"; }; then
    failed=$((failed + 1))
    echo "FAILED: $name: status $got, expected $status"
    sed 's/^/  err: /' "$work/.err" | head -5
    sed 's/^/  out: /' "$work/.out" | cut -c1-200 | head -5
  fi
}

cd "$work" || exit 1
printf '{"id": "a", "text": "hang the spring"}\n{"id": "b", "text": "use a ruler"}\n' >good.jsonl
printf 'hang the spring from a clamp' >one.txt
mkdir empty class && cp one.txt class/one.txt && printf '' >class/nothing.txt && printf 'x' >class/odd.xyz
rub=spring-extension

# ordinary use
expect "one file" 0 "" "marks. A person decides" "$program" check $rub one.txt
expect "jsonl out" 0 "" '^\{"format":1,"id":"b","rubric":"spring-extension"' "$program" check $rub good.jsonl --format jsonl
expect "json out" 0 "" '^\{"format":1,"rubric"' "$program" check $rub good.jsonl --format json
expect "rubric by path" 0 "" "" "$program" check "$source/rubrics/$rub.json" one.txt
expect "standard input" 0 "" '"id":"a"' bash -c "cat good.jsonl | '$program' check $rub --format jsonl"
expect "standard input as text" 0 "" "standard input" bash -c "cat one.txt | '$program' check $rub -"
expect "list" 0 "" "ripple-tank" "$program" rubric list
expect "show" 0 "" "risk assessment" "$program" rubric show $rub
expect "lint" 0 "" "0 findings" "$program" rubric lint $rub
expect "own examples" 0 "" "examples run, 0 problems" "$program" rubric test $rub
expect "labelled" 0 "" "Cohen's kappa over all steps 0\\.[89]" "$program" rubric test $rub --labelled "$source/corpus/labelled.jsonl"
expect "help" 0 "" "check" "$program" --help

# the page's server
expect "serve at no address" 2 "'nowhere' is not" "" "$program" serve --address nowhere
expect "serve at a port that is taken or not ours" 2 "listen" "" "$program" serve --address 192.0.2.1
expect "serve ends when told to" 0 "" "http://127.0.0.1:[0-9]+/" bash -c "'$program' serve & sleep 1; kill -TERM \$!; wait \$!"

# calculations
printf '{"id": "k", "text": "k = 6.0 N / 15 cm = 4 N/m"}\n{"id": "n", "text": "no sums here"}\n' >sums.jsonl
expect "calc as text" 0 "" "It should be 40 N/m" "$program" calc sums.jsonl
expect "calc as jsonl" 0 "" '^\{"format":1,"id":"k","calculations":\[\{"start":0,"end":25,' "$program" calc sums.jsonl --format jsonl
expect "calc with nothing to find" 0 "" '"id":"n","calculations":\[\]' "$program" calc sums.jsonl --format jsonl
expect "calc of standard input" 0 "" "right" bash -c "echo '6 / 0.15 = 40' | '$program' calc"
expect "calc in a check" 0 "" '"verdict":"wrong","slips":\["power-of-ten"\]' "$program" check $rub sums.jsonl --format jsonl
expect "division by zero in words" 0 "" "divides by zero" bash -c "echo '5 / 0 = 0' | '$program' calc"
expect "a number beyond measure in words" 0 "" "larger or smaller than" bash -c "echo '1e9999 x 2 = 5' | '$program' calc"
printf '{"id": "a", "text": "1 + 1 = 2", "seat": 4}\n' >seat.jsonl
expect "calc keeps the rest" 0 "" '"extra":\{"seat":4\}' "$program" calc seat.jsonl --format jsonl
mkdir broken && cp "$source"/rubrics/*.json "$source"/rubrics/*.txt broken/ && sed -i 's/"unit": "N\/m"/"unit": "N per blob"/' broken/formulas.json
expect "a fault in the formulas is named" 2 "formulas.json:[0-9]+:[0-9]+: error: 'N per blob' is not a unit" "" env RETORT_RUBRICS=broken "$program" calc sums.jsonl
rm broken/formulas.json
expect "no formulas" 2 "there is no 'formulas.json'" "" env RETORT_RUBRICS=broken "$program" calc sums.jsonl

# many answers together
pile=$source/corpus/demo/pile/answers.jsonl
"$program" check $rub "$pile" --format jsonl >pile.jsonl
split -n l/3 pile.jsonl part. && for part in part.??; do "$program" moderate --tally - <"$part" >"$part.tally.jsonl"; done
expect "moderate answers" 0 "" "missing more often in 10C" "$program" moderate "$pile"
expect "moderate checked lines" 0 "" "missing more often in 10C" "$program" moderate pile.jsonl
expect "moderate standard input" 0 "" "missing more often in 10C" bash -c "cat pile.jsonl | '$program' moderate"
expect "answers and checked lines give the same" 0 "" "" bash -c "cmp <('$program' moderate '$pile') <('$program' moderate pile.jsonl)"
expect "tallies of parts give the same" 0 "" "" bash -c "cmp <('$program' moderate part.ac.tally.jsonl part.aa.tally.jsonl part.ab.tally.jsonl) <('$program' moderate pile.jsonl)"
expect "tallies and lines mix" 0 "" "" bash -c "cmp <('$program' moderate --tally part.ac.tally.jsonl part.aa.tally.jsonl - <part.ab) <('$program' moderate --tally pile.jsonl)"
expect "threads change no tally" 0 "" "" bash -c "cmp <('$program' moderate --tally pile.jsonl --threads 1) <('$program' moderate --tally pile.jsonl --threads 7)"
expect "moderate as JSON" 0 "" '^\{"format":1,"seed":"1","rubrics":\[\{"id":"spring-extension"' "$program" moderate pile.jsonl --format json
expect "moderation JSON is valid" 0 "" "" bash -c "'$program' moderate pile.jsonl --format json | python3 -c 'import json, sys; json.load(sys.stdin)'"
expect "moderate as CSV" 0 "" "^step,spring-extension,10C,\"missing: " "$program" moderate pile.jsonl --format csv
expect "moderate as HTML" 0 "" "<td class=\"num same\">" "$program" moderate pile.jsonl --format html
expect "another sample" 0 "" "8 answers drawn by lot, each mark in turn \(seed 5\)" "$program" moderate pile.jsonl --seed 5 --sample 8
expect "a tally of another seed" 1 "part.aa.tally.jsonl, line 1: error: this tally was made with seed 1, and now the seed is 2" "" "$program" moderate part.aa.tally.jsonl --seed 2
expect "an empty part has an empty tally" 0 "" "" "$program" moderate --tally -
expect "nothing to moderate" 1 "there is no answer to count" "" "$program" moderate -
expect "a line of no known kind" 1 "odd.jsonl, line 2: error: this is no checked answer" "54 answers" bash -c "(head -1 pile.jsonl; echo '{\"x\": 1}'; tail -n +2 pile.jsonl) >odd.jsonl; '$program' moderate odd.jsonl"
expect "no rubric named" 1 "does not say which rubric" "" "$program" moderate good.jsonl
expect "the rubric by option" 0 "" "2 answers" "$program" moderate good.jsonl --rubric $rub
expect "a rubric named by the data is no path" 1 "there is no rubric '../$rub'" "" bash -c "echo '{\"text\": \"a\", \"rubric\": \"../$rub\"}' | '$program' moderate"
expect "unknown rubric for moderate" 2 "did you mean" "" "$program" moderate pile.jsonl --rubric spring-extensoin
expect "missing pile" 1 "no.jsonl: error: there is no file" "54 answers" "$program" moderate no.jsonl pile.jsonl
expect "drift in the order of the lines" 0 "" "Along the pile" bash -c "sed 's/\"position\":[0-9]*//' pile.jsonl | '$program' moderate --in-order"
expect "no formulas in a spreadsheet" 0 "" "'=1\\+1" bash -c "sed 's/\"group\":\"10A\"/\"group\":\"=1+1\"/' pile.jsonl | '$program' moderate --format csv"
expect "full disk for moderate" 1 "could not be written" "" "$program" moderate pile.jsonl -o /dev/full

# results tables
table=$source/corpus/demo/results/spring.csv
printf 'F / N,t 1 / s,t 2 / s\n1,2,oops\n2,4,\n3,6,6\n' >odd.csv
expect "results as text" 0 "" "directly proportional" "$program" results "$table"
expect "results of standard input" 0 "" "directly proportional" bash -c "cat '$table' | '$program' results"
expect "results of -" 0 "" "directly proportional" bash -c "cat '$table' | '$program' results -"
expect "results as JSON" 0 "" '"proportional":true' "$program" results "$table" --format json
expect "JSON is valid" 0 "" "" bash -c "'$program' results '$table' --format json | python3 -c 'import json, sys; json.load(sys.stdin)'"
expect "results as a graph" 0 "" "^<svg" "$program" results "$table" --format svg
expect "the graph is well-formed" 0 "" "" bash -c "'$program' results '$table' --format svg | python3 -c 'import sys, xml.dom.minidom as m; m.parse(sys.stdin)'"
expect "a hostile graph is well-formed" 0 "" "" bash -c "printf '<a>&\"\x01,\xff\n1,2\n2,4\n' | '$program' results --format svg | python3 -c 'import sys, xml.dom.minidom as m; m.parse(sys.stdin)'"
expect "the spring constant" 0 "" "spring constant is 40 N/m" "$program" results "$table" --rubric spring-extension
expect "columns by name" 0 "" "Gradient 0.40 N/cm" "$program" results "$table" --x "extension 1 / cm" --y force
expect "into a file" 0 "" "" bash -c "'$program' results '$table' --format svg -o graph.svg; grep -q '</svg>' graph.svg"
expect "bad cells are named and the rest goes on" 0 "odd.csv:2:5: warning: 'oops'" "Readings" "$program" results odd.csv
expect "unknown column" 2 "there is no column 'mass'" "" "$program" results "$table" --x mass
expect "unknown rubric for results" 2 "did you mean" "" "$program" results "$table" --rubric spring-extensoin
expect "unknown format for results" 2 "" "" "$program" results "$table" --format pdf
expect "missing table" 1 "no.csv: error: there is no file" "" "$program" results no.csv
expect "no numbers" 1 "results need two columns" "" "$program" results one.txt
expect "a picture is no table" 1 "no CSV file" "" bash -c "printf '\x89PNG\x00\x00' | '$program' results"
expect "a table of 100 MB" 1 "bytes, more than" "" bash -c "head -c 100000000 /dev/zero | tr '\0' , | '$program' results"
expect "too many cells" 1 "more than 20000 cells" "" bash -c "head -c 1000000 /dev/zero | tr '\0' , | '$program' results"
expect "ten thousand rows in good time" 0 "" "Gradient" timeout 20 bash -c "python3 -c 'for i in range(9990): print(i, i * 2 + i % 7, sep=\",\")' | '$program' results"
expect "full disk for results" 1 "could not be written" "" "$program" results "$table" -o /dev/full

# a class
demo=$source/corpus/demo/spring-extension second=$source/corpus/demo/spring-second
expect "a class as text" 0 "" "9 of 12 leave this out" "$program" class $rub "$demo"
expect "a class as JSON" 0 "" '^\{"format":1,"rubric":"spring-extension"' "$program" class $rub "$demo" --format json
expect "a class as JSON is valid" 0 "" "" bash -c "'$program' class $rub '$demo' --format json | python3 -c 'import json, sys; json.load(sys.stdin)'"
expect "a class as CSV has a row for each pupil" 0 "" "" bash -c "'$program' class $rub '$demo' --format csv | python3 -c '
import csv, io, sys
rows = list(csv.reader(io.StringIO(sys.stdin.buffer.read().decode(\"utf-8-sig\"))))
assert len(rows) == 13 and len({len(r) for r in rows}) == 1, rows'"
expect "no marks unless asked for" 0 "" "" bash -c "! '$program' class $rub '$demo' | grep -q ' of 6'"
expect "marks if asked for" 0 "" "5-6 of 6" "$program" class $rub "$demo" --with-range
expect "first drafts compared" 0 "" "6 drafts are compared with the first" "$program" class $rub "$second" --before "$demo"
expect "first drafts of two places" 0 "" "2 drafts are compared with the first" "$program" class $rub "$second" --before "$demo/draft-01.txt" --before "$demo/draft-03.txt"
printf 'x <script>alert(1)</script> </style> "quotes" & \342\200\256 reordered, hang the spring from a clamp' >'hostile <b>.txt'
expect "a class as HTML" 0 "" "<h1>Force and extension of a spring: the class</h1>" "$program" class $rub "$demo" --format html
expect "slips in a file of their own" 0 "" "12 drafts" "$program" class $rub "$demo" --slips slips.html --slips-per-sheet 2
expect "a slip for each pupil" 0 "" "^12$" grep -c '<article class="slip half"' slips.html
expect "no marks on slips" 1 "" "" grep -c ' marks' slips.html
expect "slips with the range if asked for" 0 "" "of 6 marks. A person decides" bash -c "'$program' class $rub '$demo' --slips ranges.html --with-range >/dev/null; cat ranges.html"
expect "slips say what was gained" 0 "" "Since your first draft: " bash -c "'$program' class $rub '$second' --before '$demo' --slips second.html >/dev/null; cat second.html"
expect "three on a sheet" 2 "per-sheet" "" "$program" class $rub "$demo" --slips slips3.html --slips-per-sheet 3
expect "slips that cannot be written" 2 "could not be written" "" "$program" class $rub "$demo" --slips nowhere/slips.html
expect "a hostile draft is inert" 0 "" "&lt;script&gt;alert" "$program" check $rub 'hostile <b>.txt' --format html
expect "no script comes through" 0 "" "" bash -c "! '$program' check $rub 'hostile <b>.txt' --format html | grep -q '<script\|$(printf '\342\200\256')'"
expect "the same class from lines" 0 "" "2 drafts." "$program" class $rub good.jsonl
expect "a draft without words is not counted" 1 "odd.xyz" "1 has no words and is not counted" "$program" class $rub class
expect "no drafts" 1 "there is no draft" "" "$program" class $rub empty
expect "no first drafts" 1 "there is no draft" "" "$program" class $rub good.jsonl --before empty
expect "too many drafts" 1 "more than 2000 drafts" "" bash -c "yes '{\"text\":\"a\"}' | head -2001 | '$program' class $rub"
expect "codes for names" 0 "" "P[0-9]{2}" "$program" class $rub "$demo" --pseudonyms keys.csv
expect "no names where there are codes" 0 "" "" bash -c "! '$program' class $rub '$demo' --pseudonyms keys.csv --format json | grep -q draft-0"
expect "threads do not change a class" 0 "" "" bash -c "cmp <('$program' class $rub '$demo' --threads 1) <('$program' class $rub '$demo' --threads 5)"
expect "another practical is seen" 0 "" "seems to be about another practical: Force and extension" "$program" class ripple-tank "$demo"

# the command is wrong: 2, and nothing done
expect "no command" 2 "" "" "$program"
expect "unknown command" 2 "" "" "$program" chek
# Rubrics made from marking points, from drafts, and from another rubric
printf 'Title: Cooling soup\n- use a thermometer\n- record the starting temperature\n- time with a stop clock\n' >soup.txt
expect "a rubric from points" 0 "" "there: .thermometer." "$program" rubric new soup.txt -o soup.json
expect "it has no faults" 0 "" "0 problems" "$program" rubric test ./soup.json
expect "its id is the file's name" 0 "" '"id": "soup"' "$program" rubric new soup.txt
expect "an id of one's own" 0 "" '"id": "broth"' "$program" rubric new soup.txt --id broth
printf 'Put the thermometre in and read the temp at the start.' >soup-draft.txt
expect "it checks drafts" 0 "" "There .2." "$program" check ./soup.json soup-draft.txt
expect "words to add" 0 "" "From 1 draft" "$program" rubric suggest ./soup.json soup-draft.txt
printf '{"id": "soup2", "title": "Another soup", "question": "How fast does it cool? [6 marks]"}' >soup2-changes.json
expect "another question" 0 "" "" "$program" rubric overlay ./soup.json soup2-changes.json -o soup2.json
expect "the overlay checks drafts" 0 "" "Another soup" "$program" check ./soup2.json soup-draft.txt
printf 'Title: nothing\n' >no-points.txt
expect "no marking points" 2 "no-points.txt" "" "$program" rubric new no-points.txt -o no.json
expect "nothing half-written" 1 "" "" test -e no.json
expect "no such points" 2 "no-such.txt" "" "$program" rubric new no-such.txt
expect "changes that are no JSON" 2 "bad-changes.json:1" "" bash -c "printf '{x' >bad-changes.json; '$program' rubric overlay ./soup.json bad-changes.json"
expect "a change unknown" 2 "odd-changes.json:1.*colour" "" bash -c "printf '{\"id\": \"a\", \"colour\": 1}' >odd-changes.json; '$program' rubric overlay ./soup.json odd-changes.json"
expect "drafts that are not there" 1 "gone.txt" "" "$program" rubric suggest ./soup.json gone.txt

expect "unknown rubric" 2 "did you mean 'spring-extension'" "" "$program" check spring-extensoin one.txt
expect "unknown format" 2 "" "" "$program" check $rub one.txt --format xml
expect "missing rubric file" 2 "no.json.*there is no file" "" "$program" check ./no.json one.txt
expect "broken rubric" 2 "bad.json:1:2: error: this is not valid JSON" "" bash -c "printf '{x' >bad.json; '$program' check ./bad.json one.txt"
expect "rubric that includes itself" 2 "self.json:1:.*includes itself" "" bash -c "printf '{\"format\":1,\"id\":\"self\",\"title\":\"t\",\"question\":\"q\",\"include\":[\"self.json\"],\"steps\":[]}' >self.json; '$program' check ./self.json one.txt"
expect "no rubrics folder" 2 "folder with the rubrics was not found" "" env RETORT_RUBRICS=/nowhere "$program" rubric list
expect "deep rubric" 2 "nested more than" "" bash -c "python3 -c 'print(\"[\"*100000)' >deep.json; '$program' check ./deep.json one.txt"

# some input is bad: 1, the rest is done
expect "missing file" 1 "none.txt: error: there is no file" "hang the spring" "$program" check $rub none.txt one.txt
expect "odd ending in a folder" 1 "odd.xyz: error: the ending" "hang the spring" "$program" check $rub class
expect "empty folder" 1 "holds no answers" "" "$program" check $rub empty
expect "empty answer" 0 "" "There are no words" "$program" check $rub class/nothing.txt
expect "bad lines" 1 "line 2: error: this is not valid JSON" '"id":"z"' bash -c "printf '{\"text\": \"a\"}\nnope\n{\"id\": \"z\", \"text\": \"b\"}\n' | '$program' check $rub --format jsonl"
expect "deep lines" 1 "nested more than" '"id":"z"' bash -c "python3 -c 'print(\"{\\\"id\\\":\"+\"[\"*100000); print(\"{\\\"id\\\":\\\"z\\\",\\\"text\\\":\\\"b\\\"}\")' | '$program' check $rub --format jsonl"
expect "a line of 100 MB" 1 "line 1 has more than" '"id":"z"' bash -c "(head -c 100000000 /dev/zero | tr '\\0' x; printf '\n{\"id\": \"z\", \"text\": \"b\"}\n') >big.jsonl; '$program' check $rub big.jsonl --format jsonl"
expect "a text of 100 MB" 1 "bytes, more than" "" bash -c "head -c 100000000 /dev/zero | tr '\\0' x >big.txt; '$program' check $rub big.txt --format jsonl"
expect "a folder as a file" 1 "none/: error|there is no file" "" "$program" check $rub none/
if [ "$(id -u)" != 0 ]; then
  chmod 000 one.txt
  expect "unreadable" 1 "cannot be read" "" "$program" check $rub one.txt
  chmod 644 one.txt
fi

# odd texts are answered, every byte of them
expect "invalid UTF-8" 0 "2 bytes are not valid UTF-8" '"status"' bash -c "printf 'use \\377\\376 a ruler' | '$program' check $rub --format jsonl"
expect "text of an older system" 0 "2 bytes are not UTF-8 and were read as Windows-1252" '"status"' bash -c "printf 'heat to 60 \\260C, it\\222s hot' >odd.txt; '$program' check $rub odd.txt --format jsonl"
expect "an empty answer is named" 0 "no words in it" '"status"' "$program" check $rub class/nothing.txt --format jsonl
expect "invalid UTF-8 and NUL" 0 "1 NUL bytes" '"status"' bash -c "printf 'use \\377\\376 a ruler\\0 on the spring' >odd.txt; '$program' check $rub odd.txt --format jsonl"
expect "10,000 words without a space" 0 "" '"status"' bash -c "python3 -c 'print(\"ruler\"*10000)' >long.txt; '$program' check $rub long.txt --format jsonl"
expect "right to left and combining" 0 "" '"status"' bash -c "python3 -c 'print(\"\\u05e9\\u05dc\\u05d5\\u05dd a\\u0301\\u0302\"*5000)' >rtl.txt; '$program' check $rub rtl.txt --format jsonl"
expect "a megabyte of anything" 0 "" '"status"' bash -c "python3 -c 'print(\"measure the length (1.5 N) it \"*30000)' >mega.txt; '$program' check $rub mega.txt --format jsonl"

# answers in CSV files
printf 'Who,First draft,Second draft,Class\nAnna,hang the spring,use a ruler,9B\nBen,,k = 6 / 0.15 = 40,9B\n' >form.csv
expect "a CSV file" 0 "answers were taken from 'Second draft'" '"id":"row 3".*"right"' "$program" calc form.csv --format jsonl
expect "columns by name" 0 "row 3 \(Ben\) has no answer" '"id":"Anna"' "$program" check $rub form.csv --answer-column "first draft" --label-column 1 --format jsonl
expect "no such column" 1 "no column 'third' .named with --answer-column.; to put it right: use one of these.*'Who', 'First draft'" "" "$program" check $rub form.csv --answer-column third

# other kinds of files
(cd class && python3 -m zipfile -c ../class.zip one.txt odd.xyz)
printf 'x' >old.doc; printf 'x' >photo.jpg; printf 'x' >macros.docm; printf 'x' >broken.docx
expect "a .zip file" 1 "class.zip/odd.xyz: error: the ending" '"id":"one"' "$program" check $rub class.zip --format jsonl
expect "an old document" 1 "old.doc: error: '.doc' files cannot be read; to put it right: open it in a word processor" '"id":"one"' "$program" check $rub old.doc one.txt --format jsonl
expect "a picture" 1 "photo.jpg: error: this is a picture" "" "$program" check $rub photo.jpg
expect "macros" 1 "macros.docm: error: '.docm' files can hold macros" "" "$program" check $rub macros.docm
expect "a broken document" 1 "broken.docx: error: this file is damaged" "" "$program" check $rub broken.docx
expect "no program for PDF files" 1 "needs the program 'pdftotext', which is not there" "" bash -c "printf x >a.pdf; PATH= '$program' check $rub a.pdf"

expect "moderate a CSV file" 0 "row 3 .Ben. has no answer" "" "$program" moderate form.csv --rubric $rub --answer-column 2 --label-column 1

# codes instead of names
expect "pseudonyms" 0 "" '"id":"P[0-9][0-9]"' "$program" check $rub good.jsonl one.txt --pseudonyms key.csv --format jsonl
expect "the key file" 0 "" '^"one","P[0-9][0-9]"' cat key.csv
expect "pseudonyms stay" 0 "" "" bash -c "cp key.csv key.old; '$program' calc one.txt --pseudonyms key.csv -o out.txt && grep -q \"\$(sed -n 's/^\"one\",\"\(.*\)\"/\1/p' key.old)\" out.txt && cmp key.csv key.old"
expect "a bad key file" 2 "line 2 of the key file is not a label and a code" "" bash -c "printf 'label,code\nAnna\n' >bad.csv; '$program' check $rub one.txt --pseudonyms bad.csv"
expect "a key file that cannot be written" 1 "could not be written" "" "$program" check $rub one.txt --pseudonyms /no/such/folder/key.csv -o coded.txt
expect "then no output is left" 0 "" "" bash -c "! ls coded.txt*"

# output that cannot be written
expect "full disk" 1 "could not be written" "" bash -c "'$program' check $rub good.jsonl --format jsonl >/dev/full"
expect "full disk by -o" 1 "could not be written" "" "$program" check $rub good.jsonl --format jsonl -o /dev/full
expect "full disk for a list" 1 "could not be written" "" "$program" rubric list -o /dev/full
expect "no such folder for -o" 2 "could not be written" "" "$program" check $rub good.jsonl -o /no/such/folder/x
expect "closed pipe" 0 "" "" bash -c "set -o pipefail; yes '{\"id\": \"a\", \"text\": \"hang the spring\"}' | head -20000 | { '$program' check $rub --format jsonl; echo \"status \$?\" >&2; } | head -1 >/dev/null; exit 0"
expect "closed pipe is status 1" 0 "reader of the output went away" "" bash -c "yes '{\"id\": \"a\", \"text\": \"hang the spring\"}' | head -20000 | { '$program' check $rub --format jsonl; [ \$? = 1 ] || touch wrong; } | head -1 >/dev/null; [ ! -e wrong ]"
expect "nothing half-written" 0 "" "" bash -c "'$program' check $rub none.txt -o out.txt; ls out.txt* | grep -qx out.txt"

# many answers: the same output, in order, whatever the threads
python3 -c '
import json
for i in range(3000): print(json.dumps({"id": str(i), "text": "measure the length with a ruler " * (i % 7)}))' >many.jsonl
"$program" check $rub many.jsonl --format jsonl --threads 1 >one.out 2>/dev/null
"$program" check $rub many.jsonl --format jsonl --threads 7 >seven.out 2>/dev/null
expect "threads change nothing" 0 "" "" cmp one.out seven.out
expect "all answered, in order" 0 "" "" bash -c "python3 -c '
import json
ids = [json.loads(l)[\"id\"] for l in open(\"one.out\")]
assert ids == [str(i) for i in range(3000)]'"

echo "$((tests - failed)) passed, $failed failed"
[ "$failed" = 0 ]
