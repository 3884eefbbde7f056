-- Frames that come late look for the sealed stacks of their time.
create index stack_sealed_lately on stook.stack (station_id, sealed_at) where state = 'SEALED';
