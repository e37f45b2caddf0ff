using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.Bench;

/// <summary>How the clips are watched. Figures without a source are bench practice.</summary>
public sealed record ClipWatchOptions
{
    /// <summary>Two counts agree when they differ by less than this share.</summary>
    /// <value>Default 0.002: a thirtieth of a semitone, and ten times what the mains moves in a second.</value>
    public double Agreement { get; init; } = 0.002;

    /// <summary>Amplifier gain from which two agreeing counts are believed; below it the counter works under its specified level.</summary>
    /// <value>Default 4: it lifts 3 mV over the 10 mV from which counters are specified.</value>
    public double GainForTrust { get; init; } = 4;

    /// <summary>Agreeing counts that make a tone when the counter has the level it needs.</summary>
    public int CountsWithLevel { get; init; } = 2;

    /// <summary>Agreeing counts that make a tone foreign to the profile worth a question.</summary>
    public int CountsOfForeign { get; init; } = 5;

    /// <summary>Counts without a verdict after which the signal is called uncountable.</summary>
    public int CountsBeforeGivingUp { get; init; } = 10;

    /// <summary>Looks in a row at a tone that cannot be counted before the order of clipping, or the person, must tell.</summary>
    public int LooksBeforeGoingByOrder { get; init; } = 3;

    /// <summary>A level at the terminal above this speaks for a tone even when nothing can be counted.</summary>
    /// <value>Default 1 mV: a third of the lowest usual level.</value>
    public Level Present { get; init; } = Level.FromMillivolts(1);

    /// <summary>Counts of a close listening, and how many of them must agree on a tone.</summary>
    /// <value>Default 30 and 4: a counter that is right only every fifth time still gets there in nine cases of ten (binomial).</value>
    public (int Counts, int Agreeing) CloseListening { get; init; } = (30, 4);

    /// <summary>How often, in silence, the fixture hunts for a level, in case a far-off capacitance hides the tone.</summary>
    public TimeSpan SilenceBeforeHunt { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>Silence in a survey after which the person is asked.</summary>
    /// <value>Default 12 s: moving a clip takes a few seconds.</value>
    public TimeSpan SilenceBeforeSurveyQuestion { get; init; } = TimeSpan.FromSeconds(12);

    /// <summary>Silence in a sweep after which the person is asked, and again after twice as long.</summary>
    /// <value>Default 40 s: an old capacitor must come off first.</value>
    public TimeSpan SilenceBeforeSweepQuestion { get; init; } = TimeSpan.FromSeconds(40);

    /// <summary>Silence after which the last missing outputs of a survey are written down as silent.</summary>
    /// <value>Default 2 minutes: longer than fetching a tool.</value>
    public TimeSpan SilenceBeforeSurveyConclusion { get; init; } = TimeSpan.FromMinutes(2);

    /// <summary>The same in a sweep.</summary>
    /// <value>Default 6 minutes: longer than getting a stubborn capacitor off.</value>
    public TimeSpan SilenceBeforeSweepConclusion { get; init; } = TimeSpan.FromMinutes(6);
}
