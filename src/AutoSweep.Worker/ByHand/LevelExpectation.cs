namespace AutoSweep.Worker.ByHand;

/// <summary>What a level should be about, before somebody types it.</summary>
/// <param name="Volts">The level at the meter's input, in volts.</param>
/// <param name="Factor">How many times more or less is still plausible; above 1.</param>
/// <param name="Because">Where the expectation comes from, for the question.</param>
public sealed record LevelExpectation(double Volts, double Factor, string Because)
{
    // Slips of the unit: mV for V is three decades, a misread point one.
    private const int MostDecades = 3;

    /// <summary>Whether a level is plausible.</summary>
    public bool Allows(double volts) => volts > 0 && Math.Abs(Math.Log(volts / Volts)) <= Math.Log(Factor);

    /// <summary>What was meant, if a slip by whole decades explains it.</summary>
    /// <returns>None where no number of decades makes it plausible.</returns>
    public double? Instead(double volts)
    {
        if (volts <= 0)
            return null;
        var decades = (int)Math.Round(Math.Log10(Volts / volts));
        var meant = volts * Math.Pow(10, decades);
        return decades != 0 && Math.Abs(decades) <= MostDecades && Allows(meant) ? meant : null;
    }
}
