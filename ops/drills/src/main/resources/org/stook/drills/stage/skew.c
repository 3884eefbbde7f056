/* Puts a process's wall clock off by STOOK_DRILL_SKEW seconds. The monotonic clock stays, as on a machine whose clock is wrong. */
#define _GNU_SOURCE
#include <stdlib.h>
#include <sys/syscall.h>
#include <sys/time.h>
#include <time.h>
#include <unistd.h>

static long off(void) {
  const char *seconds = getenv("STOOK_DRILL_SKEW");
  return seconds ? atol(seconds) : 0;
}

int clock_gettime(clockid_t id, struct timespec *t) {
  int r = (int)syscall(SYS_clock_gettime, id, t);
  if (r == 0 && (id == CLOCK_REALTIME || id == CLOCK_REALTIME_COARSE)) t->tv_sec += off();
  return r;
}

int gettimeofday(struct timeval *t, void *zone) {
  (void)zone;
  struct timespec now;
  int r = clock_gettime(CLOCK_REALTIME, &now);
  t->tv_sec = now.tv_sec;
  t->tv_usec = now.tv_nsec / 1000;
  return r;
}

time_t time(time_t *t) {
  struct timespec now;
  clock_gettime(CLOCK_REALTIME, &now);
  if (t) *t = now.tv_sec;
  return now.tv_sec;
}
