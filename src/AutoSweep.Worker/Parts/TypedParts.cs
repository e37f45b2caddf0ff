using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Parts;

/// <summary>Parts whose value a person reads off a meter without a port, and types.</summary>
/// <param name="input">Where the lines come from.</param>
/// <param name="output">Where the answers go.</param>
/// <param name="accuracyShare">The limit of the meter's error as a share of the reading; counts as rectangular (JCGM 100:2008, 4.3.7).</param>
/// <param name="words">Takes a line that is a word and no value, and says so; none where only values are typed.</param>
public sealed class TypedParts(TextReader input, TextWriter output, double accuracyShare, Func<string, bool>? words = null) : IPartSource
{
    /// <inheritdoc/>
    public string? Meter => null;

    /// <inheritdoc/>
    public async Task<MeasuredPart?> NextAsync(CancellationToken cancellationToken)
    {
        while (true)
        {
            // The console's own reader blocks whatever the token says; the wait for it does not.
            var line = await Task.Run(input.ReadLine, CancellationToken.None).WaitAsync(cancellationToken);
            // Whoever listens for words ends this wait: the next line answers the next question.
            if (line is not null && words?.Invoke(line) == true)
                await Task.Delay(Timeout.InfiniteTimeSpan, TimeProvider.System, cancellationToken);
            if (line is null || string.Equals(line.Trim(), "q", StringComparison.OrdinalIgnoreCase))
                return null;
            if (TypedCapacitance.OfPart(line) is { } typed)
                return MeasuredPart.Typed(typed, accuracyShare);
            await output.WriteLineAsync($"  >> '{line.Trim()}' is no capacitance. Write {TypedCapacitance.Expected}; q ends.");
        }
    }

    /// <inheritdoc/>
    public Task AskForAsync(int output, IReadOnlyList<string> parts, CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task FinishAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task SignalAsync(bool isFine, CancellationToken cancellationToken) => Task.CompletedTask;
}
