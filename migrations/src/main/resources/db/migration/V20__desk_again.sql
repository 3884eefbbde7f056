-- What people sent back is looked for with every change on the queue page; what is found by a frame's name, by its hash.
create index review_sent_back on stook.review (id) where verdict = 'SENT_BACK';
