/* A stand-in for an installed VISA library, for tests: the C interface of VPP-4.3.2 as far as the product calls it. An "instrument" is a TCP
   port on this machine. On a message resource (INSTR) a line feed counts as END; it notes what an instrument would report as errors: a read
   when nothing was asked (-420) and a message before the last answer was read (-410). Device clear breaks the connection and makes it anew,
   which empties both ends. The functions at the end are the test's; a program of its own is told its instruments by VISA_STANDIN,
   "NAME=PORT;NAME=PORT". */
#include <arpa/inet.h>
#include <errno.h>
#include <netinet/tcp.h>
#include <poll.h>
#include <pthread.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/socket.h>
#include <time.h>
#include <unistd.h>

#define SUCCESS 0
#define SUCCESS_TERM_CHAR 0x3FFF0005
#define SUCCESS_MAX_CNT 0x3FFF0006
#define ERROR_RSRC_NFOUND ((int32_t)0xBFFF0011)
#define ERROR_INV_RSRC_NAME ((int32_t)0xBFFF0012)
#define ERROR_INV_OBJECT ((int32_t)0xBFFF000E)
#define ERROR_TMO ((int32_t)0xBFFF0015)
#define ERROR_ABORT ((int32_t)0xBFFF0030)
#define ERROR_CONN_LOST ((int32_t)0xBFFF00A6)
#define ATTR_TMO_VALUE 0x3FFF001A
#define ATTR_TERMCHAR 0x3FFF0018
#define ATTR_TERMCHAR_EN 0x3FFF0038

struct resource { char name[256]; int port; };
struct session { int open, stream, port, fd, owed, reading, abort[2]; uint32_t manager, timeout; uint8_t termchar; int termchar_on; };
struct count { char name[32]; int calls; int32_t fault; };
struct attribute { uint32_t id; uint64_t value; };

static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;
static struct resource resources[32];
static struct session sessions[64]; /* the session number is the index + 1 */
static struct count counts[32];
static struct attribute attributes[32];
static int resource_count, count_count, attribute_count, managers, found, piece, mute;

/* Only under the lock: the link's thread counts while the test looks. */
static struct count *count_of(const char *name)
{
    for (int i = 0; i < count_count; i++)
        if (!strcmp(counts[i].name, name))
            return &counts[i];
    snprintf(counts[count_count].name, sizeof counts[0].name, "%s", name);
    counts[count_count].calls = counts[count_count].fault = 0;
    return &counts[count_count++];
}

/* Notes a call; the fault that the test has planted for it, if any, comes once. */
static int32_t called(const char *name)
{
    pthread_mutex_lock(&lock);
    struct count *count = count_of(name);
    int32_t fault = count->fault;
    count->calls++;
    count->fault = 0;
    pthread_mutex_unlock(&lock);
    return fault;
}

static struct session *session_of(uint32_t vi) { return vi >= 1 && vi <= 64 && sessions[vi - 1].open ? &sessions[vi - 1] : NULL; }

static int connected(int port)
{
    struct sockaddr_in address = { .sin_family = AF_INET, .sin_port = htons((uint16_t)port), .sin_addr = { htonl(INADDR_LOOPBACK) } };
    int fd = socket(AF_INET, SOCK_STREAM, 0), on = 1;
    setsockopt(fd, IPPROTO_TCP, TCP_NODELAY, &on, sizeof on);
    if (connect(fd, (struct sockaddr *)&address, sizeof address) == 0)
        return fd;
    close(fd);
    return -1;
}

static int64_t now(void)
{
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return time.tv_sec * 1000LL + time.tv_nsec / 1000000;
}

static void add(const char *name, int port)
{
    snprintf(resources[resource_count].name, sizeof resources[0].name, "%s", name);
    resources[resource_count++].port = port;
}

static void add_from_environment(void)
{
    const char *list = getenv("VISA_STANDIN");
    char copy[1024], *save = NULL;
    if (resource_count > 0 || list == NULL)
        return;
    snprintf(copy, sizeof copy, "%s", list);
    for (char *one = strtok_r(copy, ";", &save); one != NULL; one = strtok_r(NULL, ";", &save)) {
        char *equals = strrchr(one, '=');
        *equals = 0;
        add(one, atoi(equals + 1));
    }
}

int32_t viOpenDefaultRM(uint32_t *manager)
{
    int32_t fault = called("viOpenDefaultRM");
    add_from_environment();
    *manager = 1000u + (uint32_t)++managers;
    return fault;
}

int32_t viOpen(uint32_t manager, const char *name, uint32_t mode, uint32_t timeout, uint32_t *vi)
{
    int32_t fault = called("viOpen");
    (void)mode, (void)timeout;
    if (fault)
        return fault;
    for (int i = 0; i < resource_count; i++) {
        if (strcasecmp(resources[i].name, name))
            continue;
        int fd = connected(resources[i].port), at = 0;
        if (fd < 0)
            return ERROR_RSRC_NFOUND;
        while (at < 64 && sessions[at].open)
            at++;
        size_t length = strlen(name);
        struct session *new = &sessions[at];
        *new = (struct session){ .open = 1, .port = resources[i].port, .fd = fd, .manager = manager, .timeout = 2000, .termchar = '\n' };
        new->stream = !strncasecmp(name, "ASRL", 4) || (length > 8 && !strcasecmp(name + length - 8, "::SOCKET"));
        if (pipe(new->abort))
            return ERROR_RSRC_NFOUND;
        *vi = (uint32_t)at + 1;
        return SUCCESS;
    }
    return strstr(name, "::") ? ERROR_RSRC_NFOUND : ERROR_INV_RSRC_NAME;
}

int32_t viClose(uint32_t vi)
{
    called("viClose");
    for (int i = 0; i < 64; i++) {
        struct session *one = &sessions[i];
        if (!one->open || (one->manager != vi && (uint32_t)i + 1 != vi))
            continue;
        close(one->fd), close(one->abort[0]), close(one->abort[1]);
        one->open = 0;
    }
    return SUCCESS;
}

int32_t viSetAttribute(uint32_t vi, uint32_t id, uintptr_t value)
{
    struct session *session = session_of(vi);
    int i = 0;
    if (session == NULL)
        return ERROR_INV_OBJECT;
    if (id == ATTR_TMO_VALUE)
        session->timeout = (uint32_t)value;
    if (id == ATTR_TERMCHAR)
        session->termchar = (uint8_t)value;
    if (id == ATTR_TERMCHAR_EN)
        session->termchar_on = value != 0;
    while (i < attribute_count && attributes[i].id != id)
        i++;
    if (i == attribute_count)
        attribute_count++;
    attributes[i] = (struct attribute){ id, value };
    return SUCCESS;
}

int32_t viWrite(uint32_t vi, const uint8_t *bytes, uint32_t count, uint32_t *done)
{
    struct session *session = session_of(vi);
    int32_t fault = called("viWrite");
    *done = 0;
    if (session == NULL)
        return ERROR_INV_OBJECT;
    if (fault)
        return fault;
    if (session->owed && !session->stream)
        called("interrupted");
    session->owed = memchr(bytes, '?', count) != NULL;
    if (send(session->fd, bytes, count, MSG_NOSIGNAL) < 0)
        return ERROR_CONN_LOST;
    *done = count;
    return SUCCESS;
}

/* One byte, or why there is none. */
static int32_t byte_of(struct session *session, int64_t until, uint8_t *byte)
{
    struct pollfd ready[2] = { { session->fd, POLLIN, 0 }, { session->abort[0], POLLIN, 0 } };
    int64_t left = until - now();
    if (poll(ready, 2, left > 0 ? (int)left : 0) == 0)
        return ERROR_TMO;
    if (ready[1].revents) {
        char drop;
        return read(session->abort[0], &drop, 1) == 1 ? ERROR_ABORT : ERROR_INV_OBJECT;
    }
    return recv(session->fd, byte, 1, 0) == 1 ? SUCCESS : ERROR_CONN_LOST;
}

static int32_t message_of(struct session *session, uint8_t *buffer, uint32_t count, uint32_t *done)
{
    int64_t until = now() + session->timeout;
    while (*done < count && (piece == 0 || *done < (uint32_t)piece)) {
        int32_t status = byte_of(session, until, &buffer[*done]);
        if (status)
            return status;
        uint8_t last = buffer[(*done)++];
        if (!session->stream && last == '\n') {
            session->owed = 0;
            return SUCCESS;
        }
        if (session->termchar_on && last == session->termchar)
            return SUCCESS_TERM_CHAR;
    }
    return SUCCESS_MAX_CNT;
}

int32_t viRead(uint32_t vi, uint8_t *buffer, uint32_t count, uint32_t *done)
{
    struct session *session = session_of(vi);
    int32_t status = called("viRead");
    *done = 0;
    if (session == NULL)
        return ERROR_INV_OBJECT;
    if (status)
        return status;
    if (!session->owed && !session->stream)
        called("unasked");
    pthread_mutex_lock(&lock);
    session->reading = 1;
    pthread_mutex_unlock(&lock);
    called("reading"); /* from here on viTerminate ends it */
    status = message_of(session, buffer, count, done);
    pthread_mutex_lock(&lock);
    session->reading = 0;
    struct pollfd late = { session->abort[0], POLLIN, 0 };
    char drop;
    while (poll(&late, 1, 0) > 0 && read(session->abort[0], &drop, 1) == 1)
        ;
    pthread_mutex_unlock(&lock);
    return status;
}

int32_t viClear(uint32_t vi)
{
    struct session *session = session_of(vi);
    int32_t fault = called("viClear");
    if (session == NULL)
        return ERROR_INV_OBJECT;
    if (fault)
        return fault;
    close(session->fd);
    session->fd = connected(session->port);
    session->owed = 0;
    return session->fd < 0 ? ERROR_CONN_LOST : SUCCESS;
}

int32_t viReadSTB(uint32_t vi, uint16_t *status)
{
    struct session *session = session_of(vi);
    int32_t fault = called("viReadSTB");
    if (session == NULL)
        return ERROR_INV_OBJECT;
    if (fault)
        return fault;
    struct pollfd ready = { session->fd, POLLIN, 0 };
    char next;
    int waiting = poll(&ready, 1, 0) > 0;
    if (waiting && recv(session->fd, &next, 1, MSG_PEEK) == 0)
        return ERROR_CONN_LOST;
    *status = waiting && !mute ? 0x10 : 0;
    return SUCCESS;
}

int32_t viTerminate(uint32_t vi, uint16_t degree, uint32_t job)
{
    struct session *session = session_of(vi);
    (void)degree, (void)job;
    called("viTerminate");
    if (session == NULL)
        return ERROR_INV_OBJECT;
    pthread_mutex_lock(&lock);
    int failed = session->reading && write(session->abort[1], "x", 1) != 1;
    pthread_mutex_unlock(&lock);
    return failed ? ERROR_INV_OBJECT : SUCCESS;
}

int32_t viStatusDesc(uint32_t vi, int32_t status, char *text)
{
    (void)vi;
    snprintf(text, 256, "the stand-in's own words for %08X", (unsigned)status);
    return SUCCESS;
}

int32_t viFindRsrc(uint32_t manager, const char *expression, uint32_t *list, uint32_t *count, char *first)
{
    int32_t fault = called("viFindRsrc");
    (void)manager;
    if (fault || resource_count == 0 || strcmp(expression, "?*"))
        return fault ? fault : ERROR_RSRC_NFOUND;
    *list = 2000;
    *count = (uint32_t)resource_count;
    found = 1;
    snprintf(first, 256, "%s", resources[0].name);
    return SUCCESS;
}

int32_t viFindNext(uint32_t list, char *next)
{
    (void)list;
    if (found >= resource_count)
        return ERROR_RSRC_NFOUND;
    snprintf(next, 256, "%s", resources[found++].name);
    return SUCCESS;
}

int32_t viParseRsrc(uint32_t manager, const char *name, uint16_t *type, uint16_t *board)
{
    static const struct { const char *prefix; uint16_t type; } known[] = { { "GPIB", 1 }, { "ASRL", 4 }, { "TCPIP", 6 }, { "USB", 7 } };
    (void)manager;
    *board = 0;
    for (int i = 0; i < 4; i++) {
        if (strncasecmp(name, known[i].prefix, strlen(known[i].prefix)))
            continue;
        *type = known[i].type;
        return SUCCESS;
    }
    return ERROR_INV_RSRC_NAME;
}

/* ---- the test's own ---- */

void standin_reset(void)
{
    for (uint32_t vi = 1; vi <= 64; vi++)
        viClose(vi);
    resource_count = count_count = attribute_count = piece = mute = 0;
}

void standin_add(const char *name, int port) { add(name, port); }

/* The next call of a function comes back with this. */
void standin_fail(const char *function, int32_t status)
{
    pthread_mutex_lock(&lock);
    count_of(function)->fault = status;
    pthread_mutex_unlock(&lock);
}

int standin_calls(const char *name)
{
    pthread_mutex_lock(&lock);
    int calls = count_of(name)->calls;
    pthread_mutex_unlock(&lock);
    return calls;
}

/* How many bytes a read gives at most, however large the buffer is; 0 is no limit. */
void standin_piece(int bytes) { piece = bytes; }

/* An instrument whose status byte says nothing. */
void standin_mute(int on) { mute = on; }

uint64_t standin_attribute(uint32_t id)
{
    for (int i = 0; i < attribute_count; i++)
        if (attributes[i].id == id)
            return attributes[i].value;
    return UINT64_MAX;
}

int standin_open_sessions(void)
{
    int open = 0;
    for (int i = 0; i < 64; i++)
        open += sessions[i].open;
    return open;
}
