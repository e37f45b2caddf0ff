using System.Globalization;
using AutoSweep.Core.Quantities;
using AutoSweep.Instruments;
using AutoSweep.Instruments.Meters;

namespace AutoSweep.Worker.ByHand;

/// <summary>A meter without a port: a person reads it and types the level.</summary>
/// <param name="dialogue">The person.</param>
/// <param name="reading">How it is read.</param>
public sealed class EyeReadMeter(IBenchDialogue dialogue, EyeReading reading) : IEyeReadMeter
{
    // Bench meters end at 750 V AC; a generator's terminal under an amplifier never comes near (meter manuals, from memory).
    private const double MostVolts = 750;

    // A rectangular distribution of one step (JCGM 100:2008, GUM, F.2.2.1).
    private static readonly double StepSd = 1 / Math.Sqrt(12);

    /// <inheritdoc/>
    public InstrumentIdentity Identity { get; } = new("by eye", reading.Name, "0", "0");

    /// <inheritdoc/>
    public LevelExpectation? Expected { get; set; }

    /// <summary>The range is the person's choice; nothing hangs on it.</summary>
    public double RangeVolts => 0.1;

    /// <summary>The eye waits until the digits stand.</summary>
    public TimeSpan Settling => TimeSpan.Zero;

    private string Help =>
        $"  Read the meter when its digits stand still, and type what it shows. A bare number is in {reading.UnitName}; 12.4m, 12.4 mV, 0.0124 V and 12,4 are\n"
        + "  understood. Type every digit that you can read: 12.40 says more than 12.4. u takes the last level back, q stops; nothing is lost.";

    /// <inheritdoc/>
    public double? UncertaintyVolts(double volts) => reading.AccuracyPercent is { } percent ? percent / 100 * volts / Math.Sqrt(3) : null;

    /// <inheritdoc/>
    public double RelativeNoise(TypedLevel level)
    {
        var digits = StepSd * level.StepVolts / Math.Max(level.Volts, level.StepVolts);
        return Math.Sqrt((digits * digits) + Math.Pow(reading.FlickerPercent / 100, 2));
    }

    /// <inheritdoc/>
    public Task PrepareLevelAsync(double largestVolts, double lowestHertz, CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public async Task<TypedLevel?> AskAsync(bool canTakeBack, CancellationToken cancellationToken)
    {
        var question = new BenchQuestion($"  LEVEL in {reading.UnitName}? (? help{(canTakeBack ? ", u takes the last level back" : "")}, q stops)", BenchQuestionKind.Level)
        {
            CanTakeBack = canTakeBack, Unit = reading.UnitName, HasHelp = true,
        };
        while (true)
        {
            var typed = await dialogue.AskAsync(question, cancellationToken);
            switch (typed?.ToUpperInvariant())
            {
                case null or "Q":
                    throw new OperationCanceledException("The person at the bench stopped the stage.");
                case "U" when canTakeBack:
                    return null;
                case "U":
                    dialogue.Tell("  >> There is no level of this output to take back. At the question for the clip, u takes the last output's result back.");
                    continue;
                case "?":
                    dialogue.Tell(Help);
                    continue;
            }

            if (await UnderstandAsync(typed, cancellationToken) is { } level)
                return level;
        }
    }

    /// <inheritdoc/>
    public async Task<MeterReading> ReadLevelAsync(CancellationToken cancellationToken)
    {
        var level = (await AskAsync(canTakeBack: false, cancellationToken))!.Value;
        return new(MeterReadingKind.Value, level.Volts, level.Volts.ToString("R", CultureInfo.InvariantCulture));
    }

    /// <summary>An eye counts no frequency.</summary>
    public Task<MeterReading> CountFrequencyAsync(CancellationToken cancellationToken) => Task.FromResult(new MeterReading(MeterReadingKind.NoData, double.NaN, ""));

    /// <summary>The text is on the screen already.</summary>
    public Task ShowAsync(string text, CancellationToken cancellationToken) => Task.CompletedTask;

    /// <summary>The screen rings.</summary>
    public Task BeepAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    // None where the question must be asked again.
    private async Task<TypedLevel?> UnderstandAsync(string typed, CancellationToken cancellationToken)
    {
        if (TypedLevel.Parse(typed, reading.UnitVolts) is not { } level)
        {
            dialogue.Tell($"  >> '{typed}' is no level; expected {TypedLevel.Expected}. Type it again, or ? for help.");
            return null;
        }

        if (level.Volts > MostVolts)
        {
            dialogue.Tell(string.Create(CultureInfo.InvariantCulture, $"  >> {level.Volts:0.###} V: no meter reads that here; expected some {reading.UnitName}. Look at the unit and type it again."));
            return null;
        }

        return Expected is not { } expected || expected.Allows(level.Volts) ? level : await DoubtAsync(level, expected, cancellationToken);
    }

    private async Task<TypedLevel?> DoubtAsync(TypedLevel level, LevelExpectation expected, CancellationToken cancellationToken)
    {
        var meant = expected.Instead(level.Volts);
        var question = $"  >> {Text(level.Volts)}? About {Text(expected.Volts)} {expected.Because}. "
            + (meant is { } other ? $"{Text(level.Volts)} or {Text(other)}? " : "")
            + "Type the level again: the same keeps it.";
        var again = await dialogue.AskAsync(question, cancellationToken);
        if (again is null || string.Equals(again, "q", StringComparison.OrdinalIgnoreCase))
            throw new OperationCanceledException("The person at the bench stopped the stage.");
        if (TypedLevel.Parse(again, reading.UnitVolts) is not { } second)
            return null;
        // The same twice is what the meter shows; another one is judged as a first answer is.
        return second.Volts == level.Volts || expected.Allows(second.Volts) ? second : await DoubtAsync(second, expected, cancellationToken);
    }

    private static string Text(double volts) => volts < 0.9999
        ? string.Create(CultureInfo.InvariantCulture, $"{volts * 1e3:0.####} mV")
        : string.Create(CultureInfo.InvariantCulture, $"{volts:0.####} V");
}
