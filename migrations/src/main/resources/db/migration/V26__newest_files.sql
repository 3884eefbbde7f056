-- The word at the table is of the stacks that a station's newest files belong to.
create index intake_file_by_station on stook.intake_file (station_id, id desc);
