//! Every table, guard, index and view of the file changed by another program.

use rusqlite::Connection;

use crate::proof::Row;
use crate::proof::faults::{copied, fresh};
use crate::support::program::Home;

/// What another program does to one thing in the schema, as SQL.
fn changes(sort: &str, name: &str, table: &str) -> Vec<String> {
    match sort {
        "trigger" => vec![
            format!("DROP TRIGGER {name}"),
            format!("DROP TRIGGER {name}; CREATE TRIGGER {name} BEFORE INSERT ON {table} BEGIN SELECT 1; END"),
        ],
        "table" => vec![
            format!("ALTER TABLE {name} ADD COLUMN more TEXT"),
            format!("CREATE TRIGGER away AFTER INSERT ON {name} BEGIN DELETE FROM checkpoint; END"),
            format!("CREATE TRIGGER ignored BEFORE INSERT ON {name} BEGIN SELECT RAISE(IGNORE); END"),
        ],
        "index" => vec![format!("DROP INDEX {name}")],
        _ => vec![format!("DROP VIEW {name}")],
    }
}

fn raw(home: &Home) -> Connection {
    Connection::open(home.file("nursery.outplant")).unwrap()
}

/// What is wrong after a file was changed: it has to be refused, the change named, and nothing written.
fn fault(home: &Home, change: &str) -> Option<String> {
    raw(home).execute_batch(change).map_err(|fault| format!("{change}: {fault}")).err().or_else(|| {
        let written = home.run(&["write", "noted", "text=during"]);
        let there = home.run(&["export"]).out.contains("during");
        let refused = written.code == 6 && !written.err.is_empty() && !there;
        (!refused).then(|| format!("{change}: {} {}, there {there}", written.code, written.err))
    })
}

#[test]
fn a_file_whose_tables_or_guards_were_changed_takes_no_entry() {
    let home = fresh();
    let things: Vec<(String, String, String)> = {
        let raw = raw(&home);
        let mut all = raw
            .prepare("SELECT type, name, tbl_name FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY name")
            .unwrap();
        all.query_map([], |row| Ok((row.get(0)?, row.get(1)?, row.get(2)?))).unwrap().map(Result::unwrap).collect()
    };
    assert!(things.len() > 20, "{things:?}");
    let mut row = Row::begin("each table, guard, index and view changed: refused by name, nothing written");
    for change in things.iter().flat_map(|(sort, name, table)| changes(sort, name, table)) {
        row.ran(fault(&copied(&home), &change));
    }
    row.must_hold();
    // A file as it is goes on.
    let same = fault(&copied(&home), "SELECT 1");
    assert!(same.is_some_and(|same| same.contains("there true")));
    // SQLite by itself says of a row that a trigger passes over that all is well.
    let raw = Connection::open_in_memory().unwrap();
    raw.execute_batch(
        "CREATE TABLE one (a); CREATE TRIGGER ignored BEFORE INSERT ON one BEGIN SELECT RAISE(IGNORE); END",
    )
    .unwrap();
    assert!(raw.execute("INSERT INTO one VALUES (1)", []).is_ok());
    assert_eq!(raw.query_row("SELECT count(*) FROM one", [], |row| row.get::<_, i64>(0)).unwrap(), 0);
}
