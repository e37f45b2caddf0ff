using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>Two ends of a line: the product opens one as a serial port, the test holds the other.</summary>
public sealed partial class PtyPair : IDisposable
{
    private const int ReadWrite = 2;
    private const int NoControllingTerminal = 0x100;

    private readonly FileStream _ours;
    private readonly int _descriptor;

    public PtyPair()
    {
        var descriptor = _descriptor = posix_openpt(ReadWrite | NoControllingTerminal);
        if (descriptor < 0 || grantpt(descriptor) != 0 || unlockpt(descriptor) != 0)
            throw new InvalidOperationException("This machine gives no pty.");
        Port = NameOf(descriptor);
        _ours = new(new SafeFileHandle(descriptor, ownsHandle: true), FileAccess.ReadWrite, bufferSize: 0);
    }

    public static bool IsHere => OperatingSystem.IsLinux();

    public string Port { get; }

    /// <summary>No echo, no line editing: for what does not set the line itself, as a serial port does.</summary>
    public void MakeRaw()
    {
        var settings = new byte[256]; // struct termios is 60 bytes on Linux
        if (tcgetattr(_descriptor, settings) != 0)
            throw new InvalidOperationException("This pty has no settings.");
        cfmakeraw(settings);
        _ = tcsetattr(_descriptor, 0, settings);
    }

    public void Send(params byte[] bytes) => _ours.Write(bytes);

    public Task<string> ReceiveAsync(int count) => Task.Run(() =>
    {
        var bytes = new byte[count];
        _ours.ReadExactly(bytes);
        return System.Text.Encoding.ASCII.GetString(bytes);
    });

    /// <summary>Answers line by line until the other end is closed, or the answer disposes this line: a cable that is pulled.</summary>
    public Task ServeAsync(Func<string, string?> answer) => Task.Run(() =>
    {
        try
        {
            var line = new System.Text.StringBuilder();
            for (var letter = _ours.ReadByte(); letter >= 0; letter = _ours.ReadByte())
            {
                if (letter != '\n')
                {
                    line.Append((char)letter);
                    continue;
                }

                _ours.Write(System.Text.Encoding.ASCII.GetBytes(answer(line.ToString()) ?? ""));
                line.Clear();
            }
        }
        catch (Exception exception) when (exception is IOException or ObjectDisposedException)
        {
            // The first is a pty's way of saying that the other end is closed, the second says that this one is.
        }
    });

    public void Dispose() => _ours.Dispose();

    [LibraryImport("libc")]
    private static partial int tcgetattr(int descriptor, [Out] byte[] settings);

    [LibraryImport("libc")]
    private static partial void cfmakeraw([In, Out] byte[] settings);

    [LibraryImport("libc")]
    private static partial int tcsetattr(int descriptor, int when, byte[] settings);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int posix_openpt(int flags);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int grantpt(int descriptor);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int unlockpt(int descriptor);

    // Not ptsname: its one buffer is shared by all tests that run at the time.
    private static string NameOf(int descriptor)
    {
        var name = new byte[128];
        return ptsname_r(descriptor, name, name.Length) == 0
            ? System.Text.Encoding.ASCII.GetString(name).TrimEnd('\0')
            : throw new InvalidOperationException("This pty has no name.");
    }

    [LibraryImport("libc")]
    private static partial int ptsname_r(int descriptor, [Out] byte[] name, nint length);
}
