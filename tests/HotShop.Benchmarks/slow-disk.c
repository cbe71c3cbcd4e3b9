/* Makes each fsync and fdatasync of a process take longer: preloaded by the latency benchmark, which compiles it. HOTSHOP_SYNC_MS is the addition in ms. */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <stdlib.h>
#include <time.h>

static void wait_more(void)
{
    const char *text = getenv("HOTSHOP_SYNC_MS");
    long ms = text ? atol(text) : 0;
    struct timespec left = { ms / 1000, ms % 1000 * 1000000L };
    while (nanosleep(&left, &left) != 0) { }
}

int fsync(int file)
{
    int (*real)(int) = (int (*)(int))dlsym(RTLD_NEXT, "fsync");
    wait_more();
    return real(file);
}

int fdatasync(int file)
{
    int (*real)(int) = (int (*)(int))dlsym(RTLD_NEXT, "fdatasync");
    wait_more();
    return real(file);
}
