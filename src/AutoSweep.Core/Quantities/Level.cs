using System.Globalization;

namespace AutoSweep.Core.Quantities;

/// <summary>The level of a tone: a true-rms voltage at the output's terminal.</summary>
/// <remarks>
/// Where a front-end amplifier stands before the meter, a level is what the terminal gives, the meter's figure divided by the
/// amplifier's gain. The default value is 0 V.
/// </remarks>
/// <param name="Volts">The value in volts rms; zero or more.</param>
public readonly record struct Level(double Volts) : IComparable<Level>
{
    /// <summary>The value in millivolts rms, the unit that the bench speaks.</summary>
    public double Millivolts => Volts * 1e3;

    /// <summary>A level from its value in millivolts rms.</summary>
    public static Level FromMillivolts(double millivolts) => new(millivolts * 1e-3);

    /// <summary>How many decibels this level lies above another (20 times the logarithm of the ratio).</summary>
    /// <returns>Negative when it is the lower; negative infinity when this level is zero.</returns>
    public double DecibelsAbove(Level reference) => 20 * Math.Log10(Volts / reference.Volts);

    /// <inheritdoc/>
    public int CompareTo(Level other) => Volts.CompareTo(other.Volts);

    /// <summary>Whether the left is the lower.</summary>
    public static bool operator <(Level left, Level right) => left.Volts < right.Volts;

    /// <summary>Whether the left is the higher.</summary>
    public static bool operator >(Level left, Level right) => left.Volts > right.Volts;

    /// <summary>Whether the left is not the higher.</summary>
    public static bool operator <=(Level left, Level right) => left.Volts <= right.Volts;

    /// <summary>Whether the left is not the lower.</summary>
    public static bool operator >=(Level left, Level right) => left.Volts >= right.Volts;

    /// <summary>The value as a technician writes it: <c>5.372 mV</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Millivolts:0.000} mV");
}
