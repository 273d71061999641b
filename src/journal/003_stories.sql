-- Step 3 of the file. Stories are kept as bytes, which are read several times faster than text; those kept as text go.

DROP TABLE story;
DELETE FROM checkpoint;

-- Stories as they were folded, so that not all entries have to be. `rests`: the first day on which it rests, as a number.
-- `body`: as postcard writes it (https://postcard.jamesmunns.com/wire-format).
CREATE TABLE story (
    subject INTEGER PRIMARY KEY,
    rests   INTEGER,
    species TEXT,
    body    BLOB NOT NULL
) STRICT;

CREATE INDEX story_rests ON story (rests);
CREATE INDEX story_species ON story (species, rests) WHERE species IS NOT NULL;
