package layout

// How a page is read, and where:
//
//   - page.go keeps the head of the sheet, look.go and the scan_*.go files say
//     what each cell looks like;
//   - find_blocks.go, find_headings.go and find_tables.go part the page into
//     lists and tables, open_blocks.go and axis.go read their headings;
//   - lists_beside.go, transposed.go and years_down.go know lists and tables of
//     a build of their own;
//   - facts.go, facts_text.go and page_names.go take what the page says once
//     for all its rows;
//   - legend.go and other_sheets.go spell out letters and codes, and take the
//     facts of a cover;
//   - decide_list.go, decide.go, agree.go and resolve*.go give each column its
//     meaning, from words.go and heading.go and from its content;
//   - damage_page.go looks over whole columns, damage.go and repair.go at cells;
//   - sums.go and sums_named.go tell rows of sums from records, list_carry.go
//     says what blanks repeat, lost.go asks about rows left out that read like
//     records, side_facts.go takes what stands beside a list;
//   - walk.go, list_*.go, table_row.go and diary.go turn rows into drafts;
//   - print.go, entries.go and override.go show the decision, write it down and
//     let the project file change it.
