namespace AutoSweep.Core.Stock;

/// <summary>The letters that stand for a capacitor's tolerance.</summary>
/// <remarks>
/// IEC 60062, clause on tolerance codes. H is 2.5 % there; some makers of ceramic capacitors use it for 3 %. Below 10 pF the letters
/// B to G stand for picofarads, which no filter of a generator needs; such parts are refused.
/// </remarks>
public static class ToleranceLetters
{
    /// <summary>Each letter with the lowest and highest deviation from the nominal value in per cent.</summary>
    public static IReadOnlyDictionary<string, (double LowestPercent, double HighestPercent)> Percent { get; } = new Dictionary<string, (double, double)>
    {
        ["B"] = (-0.1, 0.1),
        ["C"] = (-0.25, 0.25),
        ["D"] = (-0.5, 0.5),
        ["F"] = (-1, 1),
        ["G"] = (-2, 2),
        ["H"] = (-2.5, 2.5),
        ["J"] = (-5, 5),
        ["K"] = (-10, 10),
        ["M"] = (-20, 20),
        ["N"] = (-30, 30),
        ["Q"] = (-10, 30),
        ["S"] = (-20, 50),
        ["T"] = (-10, 50),
        ["Z"] = (-20, 80),
    };

    /// <summary>Whether a measured value lies within the tolerance of a nominal one; true where letter or nominal value are not known.</summary>
    public static bool Fits(long picofarads, long? nominalPicofarads, string? letter)
    {
        if (nominalPicofarads is not { } nominal || letter is null || !Percent.TryGetValue(letter, out var range))
            return true;
        var percent = 100.0 * (picofarads - nominal) / nominal;
        return percent >= range.LowestPercent && percent <= range.HighestPercent;
    }
}
