using System.Runtime.InteropServices;

namespace AutoSweep.Sim.Commands;

/// <summary>Ends the program when its parent closes standard input or sends SIGTERM or SIGINT, so that it never outlives it.</summary>
internal sealed class ParentWatch : IDisposable
{
    private readonly CancellationTokenSource over = new();
    private readonly PosixSignalRegistration[] signals;

    /// <param name="input">Standard input.</param>
    /// <param name="heard">Takes every line of it; none drops them.</param>
    public ParentWatch(Stream input, Action<string>? heard = null)
    {
        signals = [.. new[] { PosixSignal.SIGTERM, PosixSignal.SIGINT, PosixSignal.SIGHUP }.Select(Catch)];
        new Thread(() => Drain(input, heard)) { IsBackground = true, Name = "parent watch" }.Start();
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

    private void Drain(Stream input, Action<string>? heard)
    {
        using var lines = new StreamReader(input);
        try
        {
            while (lines.ReadLine() is { } line) heard?.Invoke(line);
        }
        catch (IOException)
        {
            // A broken input is a closed one.
        }

        over.Cancel();
    }
}
