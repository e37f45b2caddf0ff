using AutoSweep.Core.Decades;
using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.ByHand;

/// <summary>A decade box without a wire: it says which dial to what, and goes by the person's word.</summary>
/// <param name="box">What it can be set to.</param>
/// <param name="dialogue">The person.</param>
public sealed class HandDialledBox(DecadeBox box, IBenchDialogue dialogue) : IDialledBox
{
    // A value typed farther from the asked one than this is questioned: a slip in a dial is a decade or a step of the largest dials.
    private const double Plausible = 1.25;

    private const string Help =
        "  Turn the dials as it says; those that are marked have changed. Enter says: it stands so. A place that your box cannot make: dial the nearest and\n"
        + "  type what the dials add up to, such as 104.3n. u takes the last level back, q stops; nothing is lost.";

    private DialSetting? _now;

    /// <inheritdoc/>
    public DecadeBox Box => box;

    /// <inheritdoc/>
    public string Serial => box.Name;

    /// <inheritdoc/>
    public Capacitance Smallest => new(Math.Max(1, box.Smallest.Picofarads));

    /// <inheritdoc/>
    public Capacitance Largest => box.Largest;

    /// <inheritdoc/>
    public async Task<Capacitance> SetAsync(Capacitance wanted, CancellationToken cancellationToken) =>
        (await DialAsync(wanted, canTakeBack: false, cancellationToken))!.Value;

    /// <inheritdoc/>
    /// <remarks>Dials stay where a hand has left them.</remarks>
    public Task<bool> StandsAsync(CancellationToken cancellationToken) => Task.FromResult(true);

    /// <inheritdoc/>
    public async Task<Capacitance?> DialAsync(Capacitance wanted, bool canTakeBack, CancellationToken cancellationToken)
    {
        var setting = box.Nearest(wanted.Picofarads, _now);
        if (setting.Equals(_now))
            return box.Total(setting);
        var text = $"  DIAL   {DialWords.Dials(box, setting, _now)}      = {DialWords.Printed(box, setting)}\n"
            + $"  Enter when it stands so (? help{(canTakeBack ? ", u takes the last level back" : "")}, q stops)";
        var question = new BenchQuestion(text, BenchQuestionKind.Dials)
        {
            CanTakeBack = canTakeBack, MayBeEmpty = true, HasHelp = true, Dials = DialWords.Shown(box, setting, _now), Total = DialWords.Printed(box, setting),
        };
        while (true)
        {
            var typed = await dialogue.AskAsync(question, cancellationToken);
            switch (typed?.ToUpperInvariant())
            {
                case null or "Q":
                    throw new OperationCanceledException("The person at the bench stopped the stage.");
                case "":
                    return Stand(setting);
                case "U" when canTakeBack:
                    // The dials may have been turned already when the misreading came to mind: where they stand is not known, and is asked anew.
                    _now = null;
                    return null;
                case "U":
                    dialogue.Tell("  >> There is no level of this output to take back.");
                    continue;
                case "?":
                    dialogue.Tell(Help);
                    continue;
            }

            if (await UnderstandAsync(typed, setting, cancellationToken) is { } other)
                return Stand(other);
        }
    }

    /// <inheritdoc/>
    public async Task<BoxMeasurement> MeasureAsync(CancellationToken cancellationToken)
    {
        if (box.IsMeasured || _now is not { } setting)
            return BoxMeasurement.None;
        var text = $"  MEASURE the box as it stands ({DialWords.Dials(box, setting, null)}): off the generator, leads and all on the capacitance meter that measures\n"
            + "  the parts. It shows? such as 104.7n (Enter: not measured, the box's tolerance counts; u takes the last level back, q stops)";
        var question = new BenchQuestion(text, BenchQuestionKind.Box)
        {
            CanTakeBack = true, MayBeEmpty = true, Dials = DialWords.Shown(box, setting, setting), Total = DialWords.Printed(box, setting),
        };
        while (true)
        {
            var typed = await dialogue.AskAsync(question, cancellationToken);
            switch (typed?.ToUpperInvariant())
            {
                case null or "Q":
                    throw new OperationCanceledException("The person at the bench stopped the stage.");
                case "":
                    return BoxMeasurement.None;
                case "U":
                    return BoxMeasurement.Undone;
            }

            if (TypedCapacitance.Picofarads(typed) is not { } picofarads)
                dialogue.Tell($"  >> '{typed}' is no capacitance; expected {TypedCapacitance.Expected}.");
            else if (await IsMeantAsync(typed, picofarads, setting, cancellationToken))
                return new(Capacitance.FromPicofarads(picofarads), Sd(typed, picofarads), TakenBack: false);
        }
    }

    /// <summary>A person opens no relays: the dials stay where they are.</summary>
    public Task OpenAllAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private Capacitance Stand(DialSetting setting)
    {
        _now = setting;
        return box.Total(setting);
    }

    // None where the question must be asked again.
    private async Task<DialSetting?> UnderstandAsync(string typed, DialSetting asked, CancellationToken cancellationToken)
    {
        if (TypedCapacitance.Picofarads(typed) is not { } printed)
        {
            dialogue.Tell($"  >> '{typed}' is not understood; expected Enter, or what the dials add up to: {TypedCapacitance.Expected}.");
            return null;
        }

        var setting = Standing(printed);
        if (DialWords.Printed(box, setting).Picofarads != (long)Math.Round(printed))
        {
            dialogue.Tell($"  >> {Capacitance.FromPicofarads(printed)} cannot be dialled on {box.Name}; expected a sum of its dials, {DialWords.Printed(box, setting)} is nearest. Look at the dials and type it again.");
            return null;
        }

        var ratio = printed / Math.Max(1, DialWords.Printed(box, asked).Picofarads);
        if (ratio is > 1 / Plausible and < Plausible)
            return setting;
        var again = await dialogue.AskAsync(
            $"  >> {DialWords.Printed(box, setting)} where {DialWords.Printed(box, asked)} was asked for. Type it again if the dials do stand so; Enter dials anew.", cancellationToken);
        return again is not null && TypedCapacitance.Picofarads(again) is { } second && Math.Abs(second - printed) < 0.5 ? setting : null;
    }

    // As printed, whatever was measured of the dials.
    private DialSetting Standing(double printed)
    {
        var plain = box with { StrayPicofarads = 0, Decades = [.. box.Decades.Select(decade => decade with { MeasuredPicofarads = null })] };
        return plain.Nearest(printed, _now);
    }

    private async Task<bool> IsMeantAsync(string typed, double picofarads, DialSetting setting, CancellationToken cancellationToken)
    {
        var expected = box.Total(setting);
        var off = Math.Abs(picofarads - expected.Picofarads);
        // Twice the tolerance, and 100 pF of leads that the stray does not hold.
        if (off <= (2 * box.TolerancePercent / 100 * expected.Picofarads) + 100)
            return true;
        var again = await dialogue.AskAsync(
            $"  >> {Capacitance.FromPicofarads(picofarads)} where the dials say {expected}, and the box is one of {box.TolerancePercent} %. A slip of a digit, another dial, a loose clip? "
            + "Type it again: the same keeps it; Enter asks anew.", cancellationToken);
        return again is not null && string.Equals(again, typed, StringComparison.OrdinalIgnoreCase);
    }

    private double Sd(string typed, double picofarads)
    {
        var step = TypedCapacitance.StepPicofarads(typed) ?? picofarads / 1000;
        return Math.Sqrt((step * step / 12) + Math.Pow(box.MeasuredPercent / 100 * picofarads / Math.Sqrt(3), 2));
    }
}
