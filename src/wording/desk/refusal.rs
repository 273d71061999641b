//! Why nothing was written, and the next step.

use crate::wording::messages::messages;

messages! {
    refused_unknown_tray(name: text);
    refused_unknown_lot(name: text);
    refused_unknown_bed(name: text);
    refused_unknown_species(name: text);
    refused_unknown_place(name: text);
    refused_unknown_container(name: text);
    refused_unknown_field(name: text);
    refused_more_out(tray: text, wanted: count, stands: count, day: text);
    refused_more_seed(lot: text, wanted: count, holds: count, day: text);
    refused_more_dead(bed: text, species: text, wanted: count, lives: count, day: text);
    refused_more_out_than_positions(bed: text, species: text, wanted: count, open: count, day: text);
    refused_no_such_position(bed: text, rows: count, places: count, written: text);
    refused_sample_larger(tray: text, sample: count, stands: count, day: text);
    refused_two_species(tray: text, species: text, other: text);
    refused_cannot_be(what: text);
    refused_tray_renamed(was: text, is: text, since: text);
    refused_future(day: text, today: text);
    refused_tray_code_in_use(tray: text);
    refused_lot_code_in_use(lot: text);
    refused_nothing_to_undo();
    refused_unknown_entry(entry: text);
    refused_already_withdrawn(entry: text, day: text, who: text, by: text);
    refused_only_the_beginning(what: text, entry: text);
    refused_one_of_many(entry: text, all: count, list: text);
    refused_other_copy(entry: text);
    refused_undo_below_zero(entries: count, list: text);
    refused_while_looking();
    refused_not_planned(bed: text, species: text);
    refused_line(line: count, sentence: text);
    refused_lines(lines: count);
    refused_no_nursery();
    file_not_there(file: text);
    input_not_there(file: text);
    folder_not_there(folder: text);
    file_already_there(file: text);
    file_not_ours(file: text);
    file_foreign_log(file: text, log: text);
    file_newer(file: text);
    file_busy(file: text);
    file_full(file: text);
    file_read_only(file: text);
    file_damaged(file: text, what: text);
    file_other(file: text, what: text);
    chain_gap(device: text, first: text, last: text);
    chain_fork(entry: text);
    chain_wrong_hash(entry: text);
    chain_follows_another(entry: text);
    chain_other_nursery();
}
