using AutoSweep.Core.Quantities;

namespace AutoSweep.Worker.ByHand;

/// <summary>What came of measuring the box as it stands.</summary>
/// <param name="Shown">What the capacitance meter showed; none where nobody measured.</param>
/// <param name="SdPicofarads">One standard deviation of it, the meter's gain left out.</param>
/// <param name="TakenBack">Whether the last level was taken back instead.</param>
public sealed record BoxMeasurement(Capacitance? Shown, double SdPicofarads, bool TakenBack)
{
    /// <summary>Nobody measured.</summary>
    public static BoxMeasurement None { get; } = new(null, 0, false);

    /// <summary>The last level is taken back.</summary>
    public static BoxMeasurement Undone { get; } = new(null, 0, true);
}
