namespace AutoSweep.Worker.Curves;

/// <summary>A unit in which a curve file may give its levels.</summary>
/// <param name="Symbol">As it is written.</param>
/// <param name="MillivoltsOfUnity">Millivolts of 1 (of 0 for a logarithmic unit).</param>
/// <param name="IsLogarithmic">Whether it counts decibels.</param>
/// <param name="IsShape">Whether its reference is anybody's choice, so that it gives a shape only.</param>
public sealed record LevelUnit(string Symbol, double MillivoltsOfUnity, bool IsLogarithmic, bool IsShape = false)
{
    /// <summary>Every unit. 0 dBV is 1 V, 0 dBu is the square root of 0.6 V (IEC 60268-3 calls it 0.775 V), 0 dBmV is 1 mV.</summary>
    public static IReadOnlyList<LevelUnit> All { get; } =
    [
        new("mV", 1, IsLogarithmic: false),
        new("V", 1000, IsLogarithmic: false),
        new("uV", 0.001, IsLogarithmic: false),
        new("dB", 1, IsLogarithmic: true, IsShape: true),
        new("dBV", 1000, IsLogarithmic: true),
        new("dBu", 1000 * Math.Sqrt(0.6), IsLogarithmic: true),
        new("dBmV", 1, IsLogarithmic: true),
    ];

    /// <summary>The unit that is written so, in any case, with µ or u; none where there is no such unit.</summary>
    public static LevelUnit? Of(string text)
    {
        var bare = text.Trim();
        if (bare.EndsWith("rms", StringComparison.OrdinalIgnoreCase))
            bare = bare[..^3].TrimEnd();
        // Micro sign, Greek mu.
        var plain = bare.Replace('\u00B5', 'u').Replace('\u03BC', 'u');
        return All.FirstOrDefault(unit => unit.Symbol == plain) ?? All.FirstOrDefault(unit => unit.Symbol.Equals(plain, StringComparison.OrdinalIgnoreCase));
    }

    /// <summary>The smallest number that is believed: a microvolt, or 120 dB under the reference.</summary>
    public double Least => IsLogarithmic ? -120 : 0.001 / MillivoltsOfUnity;

    /// <summary>The largest number that is believed: ten volts, or 120 dB over the reference.</summary>
    public double Most => IsLogarithmic ? 120 : 10_000 / MillivoltsOfUnity;

    /// <summary>A level in millivolts.</summary>
    public double Millivolts(double value) => IsLogarithmic ? MillivoltsOfUnity * Math.Pow(10, value / 20) : value * MillivoltsOfUnity;
}
