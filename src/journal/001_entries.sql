-- Step 1 of the file. A released step is never changed: what comes later is a step of its own.

CREATE TABLE nursery_file (
    one     INTEGER PRIMARY KEY CHECK (one = 1),
    file_id TEXT    NOT NULL CHECK (length(file_id) = 16 AND NOT file_id GLOB '*[^0-9a-f]*'),
    created INTEGER NOT NULL -- milliseconds since 1970-01-01T00:00:00Z
) STRICT;

CREATE TABLE entry (
    arrival  INTEGER PRIMARY KEY CHECK (arrival > 0),
    device   TEXT    NOT NULL CHECK (length(device) BETWEEN 1 AND 32 AND NOT device GLOB '*[^0-9A-Za-z-]*'),
    seq      INTEGER NOT NULL CHECK (seq > 0),
    happened TEXT    NOT NULL CHECK (happened GLOB '[0-9][0-9][0-9][0-9]-[0-1][0-9]-[0-3][0-9]'),
    clock    TEXT             CHECK (clock GLOB '[0-2][0-9]:[0-5][0-9]'),
    recorded INTEGER NOT NULL, -- milliseconds since 1970-01-01T00:00:00Z
    who      TEXT    NOT NULL,
    kind     TEXT    NOT NULL CHECK (length(kind) > 0),
    command  INTEGER NOT NULL CHECK (command > 0),
    body     TEXT    NOT NULL CHECK (json_valid(body) AND json_type(body) = 'object'),
    prev     BLOB             CHECK (length(prev) = 32),
    hash     BLOB    NOT NULL CHECK (length(hash) = 32),
    UNIQUE (device, seq),
    CHECK ((seq = 1) = (prev IS NULL))
) STRICT;

CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;

CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never deleted'); END;

-- REPLACE deletes without asking the trigger above where recursive_triggers is off. NEW.arrival is -1 where none is given.
CREATE TRIGGER entry_is_never_replaced BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE device = NEW.device AND seq = NEW.seq)
  OR EXISTS (SELECT 1 FROM entry WHERE arrival = NEW.arrival)
BEGIN SELECT RAISE(ABORT, 'an entry is never replaced'); END;

CREATE TRIGGER entry_follows_its_chain BEFORE INSERT ON entry
WHEN NEW.prev IS NOT (SELECT hash FROM entry WHERE device = NEW.device AND seq = NEW.seq - 1)
BEGIN SELECT RAISE(ABORT, 'an entry follows the one before it on its device'); END;

CREATE TRIGGER nursery_file_is_never_changed BEFORE UPDATE ON nursery_file
BEGIN SELECT RAISE(ABORT, 'the identity of a file is never changed'); END;

CREATE TRIGGER nursery_file_is_never_deleted BEFORE DELETE ON nursery_file
BEGIN SELECT RAISE(ABORT, 'the identity of a file is never deleted'); END;

CREATE TRIGGER nursery_file_is_never_replaced BEFORE INSERT ON nursery_file
WHEN EXISTS (SELECT 1 FROM nursery_file)
BEGIN SELECT RAISE(ABORT, 'the identity of a file is never replaced'); END;

-- The facts for other tools. Entries taken back are left out. No balances: those are reckoned by the program alone.

-- What stands taken back. A withdrawal that is itself withdrawn takes nothing back. Each pass settles one more link of
-- a chain of withdrawals of withdrawals: exact for chains of up to eight.
CREATE VIEW entries_withdrawn AS
WITH
    named (taker, taken) AS MATERIALIZED (
        SELECT entry.device || ':' || entry.seq, item.value
        FROM entry, json_each(entry.body, '$.entries') AS item WHERE entry.kind = 'withdrawn'),
    pass_1 AS MATERIALIZED (SELECT taker, taken FROM named WHERE taker NOT IN (SELECT taken FROM named)),
    pass_2 AS MATERIALIZED (SELECT taker, taken FROM named WHERE taker NOT IN (SELECT taken FROM pass_1)),
    pass_3 AS MATERIALIZED (SELECT taker, taken FROM named WHERE taker NOT IN (SELECT taken FROM pass_2)),
    pass_4 AS MATERIALIZED (SELECT taker, taken FROM named WHERE taker NOT IN (SELECT taken FROM pass_3)),
    pass_5 AS MATERIALIZED (SELECT taker, taken FROM named WHERE taker NOT IN (SELECT taken FROM pass_4)),
    pass_6 AS MATERIALIZED (SELECT taker, taken FROM named WHERE taker NOT IN (SELECT taken FROM pass_5)),
    pass_7 AS MATERIALIZED (SELECT taker, taken FROM named WHERE taker NOT IN (SELECT taken FROM pass_6)),
    pass_8 AS MATERIALIZED (SELECT taker, taken FROM named WHERE taker NOT IN (SELECT taken FROM pass_7))
SELECT DISTINCT taken AS entry, taker AS withdrawn_by FROM pass_8;

CREATE VIEW entries_standing AS
SELECT device || ':' || seq AS entry, device, seq, happened, clock, recorded, who, kind, command, body
FROM entry WHERE device || ':' || seq NOT IN (SELECT entry FROM entries_withdrawn);

CREATE VIEW lots AS
SELECT entry, happened, who,
    body ->> 'lot' AS lot, body ->> 'species' AS species, body ->> 'source' AS source,
    body ->> 'collected' AS collected, body ->> 'seeds' AS seeds, body ->> 'fruits' AS fruits,
    body ->> 'seeds_per_fruit' AS seeds_per_fruit, body ->> 'mass_g' AS mass_g,
    body ->> 'seeds_per_kg' AS seeds_per_kg, body ->> 'kept' AS kept,
    body ->> 'moisture_pct' AS moisture_pct, body ->> 'store_c' AS store_c, body ->> 'initial_pct' AS initial_pct
FROM entries_standing WHERE kind = 'lot_received';

-- Seed into trays (sown, resown) and at stake (sown_in_bed).
CREATE VIEW sowings AS
SELECT entry, happened, who, kind,
    body ->> 'tray' AS tray, body ->> 'bed' AS bed, body ->> 'lot' AS lot, body ->> 'species' AS species,
    CASE kind WHEN 'sown_in_bed' THEN (body ->> 'seeds_per_hole') * (body ->> 'holes') ELSE body ->> 'seeds' END AS seeds,
    body ->> 'mass_g' AS mass_g, body ->> 'container' AS container, body ->> 'cells' AS cells, body ->> 'place' AS place
FROM entries_standing WHERE kind IN ('sown', 'resown', 'sown_in_bed');

-- Live seedlings seen standing in a tray (counted, stocktaken).
CREATE VIEW germination_counts AS
SELECT entry, happened, clock, who, kind,
    body ->> 'tray' AS tray, body ->> 'standing' AS standing, body ->> 'dead' AS dead,
    coalesce(body ->> 'about', 0) AS about, body ->> 'cells_seen' AS cells_seen, body ->> 'cells_filled' AS cells_filled
FROM entries_standing WHERE kind IN ('counted', 'stocktaken');

-- One row a replicate of a germination test.
CREATE VIEW lot_tests AS
SELECT standing.entry AS entry, standing.happened AS happened, standing.who AS who,
    standing.body ->> 'lot' AS lot, standing.body ->> 'days' AS days,
    replicate.key + 1 AS replicate, replicate.value ->> 'seeds' AS seeds, replicate.value ->> 'germinated' AS germinated
FROM entries_standing AS standing, json_each(standing.body, '$.replicates') AS replicate
WHERE standing.kind = 'lot_tested';

-- Seedlings from tray to tray (moved_on), whole trays to another place (carried), seedlings sold or given (given_out).
CREATE VIEW moves AS
SELECT entry, happened, clock, who, kind,
    CASE kind WHEN 'moved_on' THEN body ->> 'from' ELSE body ->> 'tray' END AS from_tray,
    CASE kind WHEN 'moved_on' THEN body ->> 'to' END AS to_tray,
    CASE kind WHEN 'given_out' THEN body ->> 'to' END AS given_to,
    body ->> 'count' AS count, body ->> 'how' AS how, body ->> 'container' AS container, body ->> 'cells' AS cells,
    body ->> 'place' AS place
FROM entries_standing WHERE kind IN ('moved_on', 'carried', 'given_out');

CREATE VIEW outplantings AS
SELECT entry, happened, clock, who,
    body ->> 'tray' AS tray, body ->> 'bed' AS bed, body ->> 'count' AS count, body ->> 'rows' AS rows,
    body -> 'at' AS at
FROM entries_standing WHERE kind = 'outplanted';

-- Each time a bed was described; the latest one of a bed leads from its day.
CREATE VIEW beds AS
SELECT entry, happened, who,
    body ->> 'bed' AS bed, body ->> 'field' AS field, body ->> 'length_m' AS length_m, body ->> 'width_m' AS width_m,
    body ->> 'row_bearing_deg' AS row_bearing_deg, body -> 'plan' AS plan
FROM entries_standing WHERE kind = 'bed_set';
