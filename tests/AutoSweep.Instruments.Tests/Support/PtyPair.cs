using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace AutoSweep.Instruments.Tests.Support;

/// <summary>Two ends of a line: the product opens one as a serial port, the test holds the other.</summary>
public sealed partial class PtyPair : IDisposable
{
    private const int ReadWrite = 2;
    private const int NoControllingTerminal = 0x100;

    private readonly FileStream _ours;

    public PtyPair()
    {
        var descriptor = posix_openpt(ReadWrite | NoControllingTerminal);
        if (descriptor < 0 || grantpt(descriptor) != 0 || unlockpt(descriptor) != 0)
            throw new InvalidOperationException("This machine gives no pty.");
        Port = Marshal.PtrToStringUTF8(ptsname(descriptor))!;
        _ours = new(new SafeFileHandle(descriptor, ownsHandle: true), FileAccess.ReadWrite, bufferSize: 0);
    }

    public static bool IsHere => OperatingSystem.IsLinux();

    public string Port { get; }

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

    [LibraryImport("libc", SetLastError = true)]
    private static partial int posix_openpt(int flags);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int grantpt(int descriptor);

    [LibraryImport("libc", SetLastError = true)]
    private static partial int unlockpt(int descriptor);

    [LibraryImport("libc", SetLastError = true)]
    private static partial nint ptsname(int descriptor);
}
