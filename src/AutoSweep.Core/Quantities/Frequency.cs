using System.Globalization;

namespace AutoSweep.Core.Quantities;

/// <summary>The frequency of a tone.</summary>
/// <param name="Hertz">The value in hertz; zero or more. The default, 0 Hz, stands for "nothing counted".</param>
public readonly record struct Frequency(double Hertz) : IComparable<Frequency>
{
    /// <summary>The angular frequency in radians a second.</summary>
    public double RadiansPerSecond => 2 * Math.PI * Hertz;

    /// <summary>How many cents (hundredths of an equal-tempered semitone) this tone lies above another.</summary>
    /// <returns>Negative when it is the lower; not finite when either is zero.</returns>
    public double CentsAbove(Frequency reference) => 1200 * Math.Log2(Hertz / reference.Hertz);

    /// <inheritdoc/>
    public int CompareTo(Frequency other) => Hertz.CompareTo(other.Hertz);

    /// <summary>Whether the left is the lower.</summary>
    public static bool operator <(Frequency left, Frequency right) => left.Hertz < right.Hertz;

    /// <summary>Whether the left is the higher.</summary>
    public static bool operator >(Frequency left, Frequency right) => left.Hertz > right.Hertz;

    /// <summary>Whether the left is not the higher.</summary>
    public static bool operator <=(Frequency left, Frequency right) => left.Hertz <= right.Hertz;

    /// <summary>Whether the left is not the lower.</summary>
    public static bool operator >=(Frequency left, Frequency right) => left.Hertz >= right.Hertz;

    /// <summary>The value as a technician writes it: <c>523.08 Hz</c>.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Hertz:0.00} Hz");
}
