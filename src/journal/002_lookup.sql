-- Step 2 of the file. Nothing here says anything of its own: all of it follows from the entries, can be emptied at any
-- time, and is then made anew. It lets a program begin without reading every entry. `check` proves it.

-- What entries are about: trays, lots, beds, places, the site, months of the gauge, notes, withdrawals, changes of label.
CREATE TABLE subject (
    number INTEGER PRIMARY KEY,
    sort   TEXT NOT NULL,
    name   TEXT NOT NULL,
    folded TEXT NOT NULL, -- the name without case, accents, blanks and hyphens
    UNIQUE (sort, name)
) STRICT;

CREATE INDEX subject_folded ON subject (sort, folded);

-- The entries about a subject; `lends` where one hands on species, sowings or where plants came from.
CREATE TABLE about (
    subject INTEGER NOT NULL,
    lends   INTEGER NOT NULL,
    arrival INTEGER NOT NULL,
    PRIMARY KEY (subject, lends, arrival)
) STRICT, WITHOUT ROWID;

CREATE INDEX entry_happened ON entry (happened);
CREATE INDEX entry_recorded ON entry (recorded);

-- Up to which arrival `about` is made.
CREATE TABLE looked_up (
    one     INTEGER PRIMARY KEY CHECK (one = 1),
    arrival INTEGER NOT NULL
) STRICT;

INSERT INTO looked_up (one, arrival) VALUES (1, 0);

-- Stories as they were folded, so that not all entries have to be. `rests`: the first day on which it rests, as a number.
CREATE TABLE story (
    subject INTEGER PRIMARY KEY,
    rests   INTEGER,
    species TEXT,
    body    TEXT NOT NULL
) STRICT;

CREATE INDEX story_rests ON story (rests);
CREATE INDEX story_species ON story (species, rests) WHERE species IS NOT NULL;

-- Which entries the stories are folded from, on which day, and by which program.
CREATE TABLE checkpoint (
    one     INTEGER PRIMARY KEY CHECK (one = 1),
    program TEXT    NOT NULL,
    day     INTEGER NOT NULL,
    arrival INTEGER NOT NULL
) STRICT;
