using System.Runtime.InteropServices;
using System.Threading.Channels;

namespace AutoSweep.Sim.Wire;

/// <summary>A serial line that is not there: the master's end of a Linux pseudo-terminal in raw mode.</summary>
/// <remarks>
/// The slave's end is kept open here too, so that clients can come and go without the line hanging up. A client that takes the port
/// for itself (TIOCEXCL, as .NET's serial port does) and is killed would lock all others out, since the line never closes; so
/// exclusive use is taken back again and again.
/// </remarks>
internal sealed class PtyLine : IByteStream, IDisposable
{
    /// <summary>No C library's termios is longer (Linux: 60 bytes).</summary>
    private const int TermiosRoom = 256;

    /// <summary>How long a killed client can keep others out: less than a program takes to start.</summary>
    private const int ExclusiveUseMilliseconds = 50;

    private readonly int master;
    private readonly int slave;
    private readonly Thread listener;
    private readonly Lock writing = new();
    private volatile bool closing;
    private readonly Channel<byte[]> received = Channel.CreateUnbounded<byte[]>(new() { SingleReader = true, SingleWriter = true });

    /// <exception cref="IOException">This system has no pseudo-terminals.</exception>
    public PtyLine()
    {
        const int flags = NativeTerminal.ReadWrite | NativeTerminal.NoControllingTerminal;
        master = Checked(NativeTerminal.OpenMaster(flags | NativeTerminal.CloseOnExec), "posix_openpt");
        Checked(NativeTerminal.Grant(master), "grantpt");
        Checked(NativeTerminal.Unlock(master), "unlockpt");
        Path = SlaveName();
        slave = Checked(NativeTerminal.Open(Path, flags | NativeTerminal.CloseOnExec), "open " + Path);
        MakeRaw();
        listener = new(Listen) { IsBackground = true, Name = "pty " + Path };
        listener.Start();
    }

    public static bool IsSupported => OperatingSystem.IsLinux();

    /// <summary>The slave's device, which a client opens.</summary>
    public string Path { get; }

    public string Resource => $"ASRL{Path}::INSTR";

    public async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken)
    {
        var bytes = await received.Reader.ReadAsync(cancellationToken);
        bytes.CopyTo(buffer);
        return bytes.Length;
    }

    public ValueTask WriteAsync(ReadOnlyMemory<byte> bytes, CancellationToken cancellationToken)
    {
        lock (writing)
        {
            if (closing) throw new IOException(Path + " is unplugged.");
            Write(bytes.Span);
        }

        return default;
    }

    /// <summary>Unplugs it: a client that has it open is hung up on, and the device is gone.</summary>
    public void Dispose()
    {
        lock (writing)
        {
            if (closing) return;
            closing = true;
        }

        listener.Join();
        _ = NativeTerminal.Close(slave);
        _ = NativeTerminal.Close(master);
    }

    private unsafe void Write(ReadOnlySpan<byte> bytes)
    {
        fixed (byte* start = bytes)
        {
            for (nint sent = 0; sent < bytes.Length;)
                sent += Checked((int)NativeTerminal.Write(master, start + sent, (nuint)(bytes.Length - sent)), "write");
        }
    }

    // A pty cannot be waited for by .NET's own means: one thread waits in poll for as long as it is plugged in.
    private unsafe void Listen()
    {
        var buffer = stackalloc byte[512];
        while (!closing)
        {
            _ = NativeTerminal.Control(slave, NativeTerminal.AllowFurtherOpens);
            var waiting = new PollRequest { File = master, Events = NativeTerminal.Readable };
            if (NativeTerminal.Poll(&waiting, 1, ExclusiveUseMilliseconds) <= 0) continue;
            var count = NativeTerminal.Read(master, buffer, 512);
            if (count > 0) received.Writer.TryWrite(new ReadOnlySpan<byte>(buffer, (int)count).ToArray());
        }
    }

    private unsafe void MakeRaw()
    {
        var attributes = stackalloc byte[TermiosRoom];
        Checked(NativeTerminal.GetAttributes(slave, attributes), "tcgetattr");
        NativeTerminal.MakeRaw(attributes);
        Checked(NativeTerminal.SetAttributes(slave, NativeTerminal.Now, attributes), "tcsetattr");
    }

    private unsafe string SlaveName()
    {
        var name = stackalloc byte[128];
        Checked(-NativeTerminal.SlaveName(master, name, 128), "ptsname_r");
        return Marshal.PtrToStringUTF8((nint)name)!;
    }

    private static int Checked(int result, string call) => result >= 0
        ? result
        : throw new IOException($"{call} failed: {Marshal.GetLastPInvokeErrorMessage()}");
}
