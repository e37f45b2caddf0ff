using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Terminal;

/// <summary>Keys typed as lines, so that a foot pedal, a script and a keyboard do alike.</summary>
public sealed class ConsoleKeys : IOperatorKeys
{
    /// <inheritdoc/>
    public async Task<OperatorKey> ReadAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            // The console's own reader blocks whatever the token says; the wait for it does not.
            var line = await Task.Run(Console.In.ReadLine, CancellationToken.None).WaitAsync(cancellationToken);
            if (Understand(line) is { } key)
                return key;
            Console.Out.WriteLine(
                $"  >> '{line!.Trim()}' is not known here. Enter measures, s skips, u takes the last result back, q stops.");
        }
    }

    private static OperatorKey? Understand(string? line) => line?.Trim().ToUpperInvariant() switch
    {
        null or "Q" => OperatorKey.Stop,
        "" => OperatorKey.Go,
        "S" => OperatorKey.Skip,
        "U" => OperatorKey.Undo,
        _ => null,
    };
}
