using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Instruments.Meters;

/// <summary>A detector bandwidth of a family: the slower, the lower the tones that it reads truly.</summary>
public sealed record DriverBandwidth
{
    /// <summary>The lowest frequency that it passes: the command's argument.</summary>
    [Description("The lowest frequency that it passes, in hertz: the command's argument."), Range(0.1, 1e6)]
    public required double Hertz { get; init; }

    /// <summary>What the meter calls it, where its command takes no hertz; fills <c>{bandwidth}</c>.</summary>
    /// <value>Default null: it takes the hertz.</value>
    [Description("What the meter calls it, such as S, where its command takes no hertz; fills {bandwidth}. Default null: it takes the hertz.")]
    public string? Argument { get; init; }

    /// <summary>The lowest tone for which its error is small enough to use it.</summary>
    [Description("The lowest tone, in hertz, for which its error is small enough to use it."), Range(0.1, 1e6)]
    public required double FromToneHertz { get; init; }

    /// <summary>How long the detector takes to settle after a change of level.</summary>
    [Description("How long the detector takes to settle after a change of level."), Range(0, 60)]
    public required double SettleSeconds { get; init; }

    /// <summary>Where the settling time is published.</summary>
    [Description("Where the settling time is published, or how it was measured.")]
    public required string Source { get; init; }
}
