using System.Runtime.InteropServices;

namespace AutoSweep.Sim.Wire;

/// <summary>The C library's calls for a pseudo-terminal (POSIX.1-2017, posix_openpt and following).</summary>
internal static unsafe partial class NativeTerminal
{
    private const string C = "libc";

    /// <summary>Linux values of &lt;fcntl.h&gt; and &lt;asm-generic/ioctls.h&gt;.</summary>
    public const int ReadWrite = 2;
    public const int NoControllingTerminal = 0x100;
    public const int CloseOnExec = 0x80000;
    public const int Now = 0;
    public const short Readable = 1; // POLLIN
    public const nuint AllowFurtherOpens = 0x540D; // TIOCNXCL

    [LibraryImport(C, EntryPoint = "posix_openpt", SetLastError = true)]
    public static partial int OpenMaster(int flags);

    [LibraryImport(C, EntryPoint = "grantpt", SetLastError = true)]
    public static partial int Grant(int master);

    [LibraryImport(C, EntryPoint = "unlockpt", SetLastError = true)]
    public static partial int Unlock(int master);

    [LibraryImport(C, EntryPoint = "ptsname_r", SetLastError = true)]
    public static partial int SlaveName(int master, byte* name, nuint length);

    [LibraryImport(C, EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    public static partial int Open(string path, int flags);

    [LibraryImport(C, EntryPoint = "close", SetLastError = true)]
    public static partial int Close(int file);

    [LibraryImport(C, EntryPoint = "tcgetattr", SetLastError = true)]
    public static partial int GetAttributes(int terminal, byte* attributes);

    [LibraryImport(C, EntryPoint = "cfmakeraw")]
    public static partial void MakeRaw(byte* attributes);

    [LibraryImport(C, EntryPoint = "tcsetattr", SetLastError = true)]
    public static partial int SetAttributes(int terminal, int when, byte* attributes);

    [LibraryImport(C, EntryPoint = "read", SetLastError = true)]
    public static partial nint Read(int file, byte* buffer, nuint count);

    [LibraryImport(C, EntryPoint = "write", SetLastError = true)]
    public static partial nint Write(int file, byte* buffer, nuint count);

    [LibraryImport(C, EntryPoint = "ioctl", SetLastError = true)]
    public static partial int Control(int file, nuint request);

    [LibraryImport(C, EntryPoint = "poll", SetLastError = true)]
    public static partial int Poll(PollRequest* requests, nuint count, int milliseconds);
}
