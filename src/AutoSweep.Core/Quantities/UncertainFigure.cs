using System.Globalization;

namespace AutoSweep.Core.Quantities;

/// <summary>A value as a record prints it: rounded to what its uncertainty justifies (JCGM 100:2008, GUM, 7.2.6).</summary>
/// <remarks>The expanded uncertainty has two significant digits at most, and the value stops at the same place.</remarks>
/// <param name="Value">The value, in the unit in which it is printed.</param>
/// <param name="StandardUncertainty">Its standard uncertainty in that unit; not finite or 0 where nothing is known.</param>
public readonly record struct UncertainFigure(double Value, double StandardUncertainty)
{
    /// <summary>The coverage factor: 2, an interval of about 95 % (GUM, 6.2.2 and G.6.6).</summary>
    public const double CoverageFactor = 2;

    // Without an uncertainty a figure says no more than a meter of five digits shows.
    private const int UnstatedDigits = 5;

    /// <summary>The most decimals that are printed; fewer than the uncertainty would allow where nobody asks for more.</summary>
    /// <value>Default 5: in nanofarads and millivolts a hundredth of a picofarad and of a microvolt.</value>
    public int MostDecimals { get; init; } = 5;

    /// <summary>Half of the interval that holds the true value in about 95 cases of 100.</summary>
    public double ExpandedUncertainty => CoverageFactor * StandardUncertainty;

    /// <summary>Whether an uncertainty is known.</summary>
    public bool IsStated => double.IsFinite(StandardUncertainty) && StandardUncertainty > 0;

    /// <summary>The decimal place at which the figure ends: 2 for hundredths, 0 for ones, -1 for tens.</summary>
    public int LastPlace => IsStated
        ? Math.Min(MostDecimals, 1 - Magnitude(ExpandedUncertainty))
        : Math.Clamp(UnstatedDigits - 1 - Magnitude(Value), 0, MostDecimals);

    /// <summary>The rounded value, such as <c>104.57</c>.</summary>
    public string ValueText => Text(Value, LastPlace);

    /// <summary>The rounded expanded uncertainty, such as <c>0.12</c>; empty where nothing is known.</summary>
    public string UncertaintyText => IsStated ? Text(ExpandedUncertainty, LastPlace) : "";

    /// <summary>Value and expanded uncertainty: <c>104.57 ± 0.12</c>.</summary>
    public override string ToString() => IsStated ? $"{ValueText} ± {UncertaintyText}" : ValueText;

    // Of the rounded value, because 9.96 takes the digits of 10: the place is that of the rounded uncertainty.
    private static int Magnitude(double value)
    {
        if (value == 0 || !double.IsFinite(value))
            return 0;
        var magnitude = (int)Math.Floor(Math.Log10(Math.Abs(value)));
        return Math.Round(Math.Abs(value) / Math.Pow(10, magnitude), 1, MidpointRounding.AwayFromZero) >= 10 ? magnitude + 1 : magnitude;
    }

    private static string Text(double value, int place)
    {
        if (!double.IsFinite(value))
            return "";
        var unit = Math.Pow(10, Math.Max(0, -place));
        var rounded = Math.Round(value / unit, Math.Max(0, place), MidpointRounding.AwayFromZero) * unit;
        return (rounded == 0 ? 0 : rounded).ToString("F" + Math.Max(0, place).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
