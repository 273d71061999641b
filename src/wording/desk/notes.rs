//! What was done, said back.

use crate::wording::messages::messages;

messages! {
    saved(entries: count);
    saved_entry(entry: text);
    saved_with_doubt(doubt: text);
    tried_with_doubt(doubt: text);
    dry_run(entries: count);
    taken(entries: count);
    already_here(entries: count);
    import_read(lines: count);
    import_written(lines: count);
    import_looked_up(lines: count);
    import_judged(share: count);
    import_saving();
    import_cancelled();
    undo_done(entries: count);
    undo_asks(entries: count);
    undo_would(entries: count);
    undo_left();
    undo_came_together(entry: text);
    begun(name: text, file: text);
    sample_made(file: text);
    backup_made(file: text, entries: count);
    exported(entries: count, file: text);
    check_sound(entries: count);
    check_doubts(doubts: count);
    clock_behind(today: text, newest: text);
    clock_ahead(today: text, newest: text);
    clock_asks();
    draft_kept();
}
