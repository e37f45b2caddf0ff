using AutoSweep.Worker.Levelling;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>Where everything stands on the bar of a level against its band.</summary>
/// <param name="view">What is levelled.</param>
public sealed class LevelGauge(LevellingView view)
{
    /// <summary>Decibels from the middle to either end; a level that is further off stands at the end.</summary>
    public const double Reach = 6;

    /// <summary>The picture's size.</summary>
    public const int Width = 640, Height = 150;

    /// <summary>Whether the level is within its band.</summary>
    public bool IsInBand => Math.Abs(view.Decibels) <= view.HalfBandDecibels;

    /// <summary>What there is to say of the level in a word or two.</summary>
    public string Word => IsInBand ? "in the band" : view.Decibels > 0 ? "too loud" : "too soft";

    /// <summary>Where a difference stands.</summary>
    /// <param name="decibels">Decibels above the target.</param>
    public static double X(double decibels) => Math.Round(20 + ((Width - 40) * (Math.Clamp(decibels, -Reach, Reach) + Reach) / (2 * Reach)), 1);

    /// <summary>The band's left end and width.</summary>
    public (double X, double Width) Band => (X(-view.HalfBandDecibels), Math.Round(X(view.HalfBandDecibels) - X(-view.HalfBandDecibels), 1));
}
