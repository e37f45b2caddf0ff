namespace AutoSweep.Core.Peaks;

/// <summary>Refuses what a search cannot work with, saying what was found and what was expected.</summary>
internal static class SearchLimits
{
    internal static void Check(PeakPrior prior, PeakSearchOptions options)
    {
        Require(
            options.Smallest.Picofarads > 0 && options.Smallest < options.Largest,
            $"The range {options.Smallest} to {options.Largest} is empty; expected 0 < smallest < largest.");
        Require(prior.Expected.Picofarads > 0, $"The expected capacitance is {prior.Expected}; expected more than 0.");
        Require(prior.LogSpread > 0 && prior.Q > 0 && prior.LogSpreadOfQ > 0, $"Spreads and Q of the prior must be above 0: {prior}.");
        Require(options.Budget > 0 && options.LossBoundDecibels > 0, $"Budget and loss bound must be above 0: {options}.");
    }

    internal static void Check(PeakReading reading)
    {
        Require(
            double.IsFinite(reading.Level.Volts) && reading.Level.Volts >= 0,
            $"The level is {reading.Level.Volts} V; expected a finite figure of 0 or more.");
        // Of no level at all no share can be told.
        Require(
            reading.Level.Volts == 0 || (double.IsFinite(reading.RelativeNoise) && reading.RelativeNoise >= 0),
            $"The relative noise is {reading.RelativeNoise}; expected a finite figure of 0 or more.");
        Require(reading.Capacitance.Picofarads > 0, $"The capacitance is {reading.Capacitance}; expected more than 0.");
    }

    private static void Require(bool holds, FormattableString otherwise)
    {
        if (!holds)
            throw new ArgumentException(FormattableString.Invariant(otherwise));
    }
}
