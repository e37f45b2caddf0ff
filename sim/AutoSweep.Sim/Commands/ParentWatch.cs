using System.Runtime.InteropServices;

namespace AutoSweep.Sim.Commands;

/// <summary>Ends the program when its parent closes standard input or sends SIGTERM or SIGINT, so that it never outlives it.</summary>
internal sealed class ParentWatch : IDisposable
{
    private readonly CancellationTokenSource over = new();
    private readonly PosixSignalRegistration[] signals;

    public ParentWatch(Stream input)
    {
        signals = [.. new[] { PosixSignal.SIGTERM, PosixSignal.SIGINT, PosixSignal.SIGHUP }.Select(Catch)];
        new Thread(() => Drain(input)) { IsBackground = true, Name = "parent watch" }.Start();
    }

    public CancellationToken Over => over.Token;

    public void Dispose()
    {
        foreach (var signal in signals) signal.Dispose();
    }

    private PosixSignalRegistration Catch(PosixSignal signal) => PosixSignalRegistration.Create(signal, context =>
    {
        context.Cancel = true;
        over.Cancel();
    });

    private void Drain(Stream input)
    {
        var buffer = new byte[64];
        try
        {
            while (input.Read(buffer) > 0)
            {
            }
        }
        catch (IOException)
        {
            // A broken input is a closed one.
        }

        over.Cancel();
    }
}
