-- The word at the table while the sweep is still being shot: told at once, and again when more has come.
alter table stook.stack add column word_so_far jsonb;
comment on column stook.stack.word_so_far is 'Like word, of the frames looked at so far, accepted or not; empty once the stack is judged for good.';
