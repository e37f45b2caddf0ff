using AutoSweep.Core.Quantities;
using AutoSweep.Worker.Page.Work;
using AutoSweep.Worker.Parts;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>Parts whose value a person reads off a meter without a port, and types on the page.</summary>
/// <param name="dialogue">The person.</param>
/// <param name="accuracyShare">The limit of the meter's error as a share of the reading; counts as rectangular (JCGM 100:2008, 4.3.7).</param>
public sealed class AskedParts(PageDialogue dialogue, double accuracyShare) : IPartSource
{
    /// <summary>What ends the work when it is typed.</summary>
    public const string End = "q";

    private string _what = "the part";

    /// <inheritdoc/>
    public string? Meter => null;

    /// <inheritdoc/>
    public Task AskForAsync(int output, IReadOnlyList<string> parts, CancellationToken cancellationToken)
    {
        _what = parts.Count switch
        {
            0 => FormattableString.Invariant($"the old capacitor of output {output}"),
            1 => parts[0],
            _ => string.Join(" and ", parts) + " in parallel",
        };
        return Task.CompletedTask;
    }

    /// <inheritdoc/>
    public async Task<MeasuredPart?> NextAsync(CancellationToken cancellationToken)
    {
        var trouble = "";
        while (true)
        {
            var line = await dialogue.AskAsync($"{trouble}What does {_what} measure? Such as 104.5n.", cancellationToken);
            if (line is null || string.Equals(line, End, StringComparison.OrdinalIgnoreCase))
                return null;
            if (TypedCapacitance.OfPart(line) is { } typed)
                return MeasuredPart.Typed(typed, accuracyShare);
            trouble = $"\"{line}\" is no capacitance: write {TypedCapacitance.Expected}. ";
        }
    }

    /// <inheritdoc/>
    public Task FinishAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public Task SignalAsync(bool isFine, CancellationToken cancellationToken) => Task.CompletedTask;
}
