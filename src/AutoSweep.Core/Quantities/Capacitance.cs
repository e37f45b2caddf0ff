using System.Globalization;

namespace AutoSweep.Core.Quantities;

/// <summary>A capacitance, kept as a whole number of picofarads.</summary>
/// <remarks>
/// Integral because sums of relays and of parts must compare exactly. A picofarad is a hundredth of the finest step of a
/// usual decade box and far below any calibration's uncertainty. For a standard deviation or a half-width, where a fraction of
/// a picofarad can matter to the arithmetic, use a <see cref="double"/> whose name ends in <c>Picofarads</c>.
/// The default value is 0 pF.
/// </remarks>
/// <param name="Picofarads">The value in picofarads; negative only as a difference.</param>
public readonly record struct Capacitance(long Picofarads) : IComparable<Capacitance>
{
    /// <summary>Nothing: 0 pF.</summary>
    public static Capacitance Zero => default;

    /// <summary>The value in nanofarads, the unit that the bench speaks.</summary>
    public double Nanofarads => Picofarads * 1e-3;

    /// <summary>The value in farads, the unit that formulas and instruments speak.</summary>
    public double Farads => Picofarads * 1e-12;

    /// <summary>The nearest whole picofarad to a value in picofarads.</summary>
    /// <exception cref="OverflowException">The value is not finite or beyond the range of a 64-bit integer.</exception>
    public static Capacitance FromPicofarads(double picofarads) => new(checked((long)Math.Round(picofarads, MidpointRounding.AwayFromZero)));

    /// <summary>The nearest whole picofarad to a value in nanofarads.</summary>
    /// <exception cref="OverflowException">The value is not finite or too large.</exception>
    public static Capacitance FromNanofarads(double nanofarads) => FromPicofarads(nanofarads * 1e3);

    /// <summary>The nearest whole picofarad to a value in farads.</summary>
    /// <exception cref="OverflowException">The value is not finite or too large.</exception>
    public static Capacitance FromFarads(double farads) => FromPicofarads(farads * 1e12);

    /// <inheritdoc/>
    public int CompareTo(Capacitance other) => Picofarads.CompareTo(other.Picofarads);

    /// <summary>The sum: what two capacitors in parallel make.</summary>
    public static Capacitance operator +(Capacitance left, Capacitance right) => new(checked(left.Picofarads + right.Picofarads));

    /// <summary>The difference.</summary>
    public static Capacitance operator -(Capacitance left, Capacitance right) => new(checked(left.Picofarads - right.Picofarads));

    /// <summary>Whether the left is the smaller.</summary>
    public static bool operator <(Capacitance left, Capacitance right) => left.Picofarads < right.Picofarads;

    /// <summary>Whether the left is the larger.</summary>
    public static bool operator >(Capacitance left, Capacitance right) => left.Picofarads > right.Picofarads;

    /// <summary>Whether the left is not the larger.</summary>
    public static bool operator <=(Capacitance left, Capacitance right) => left.Picofarads <= right.Picofarads;

    /// <summary>Whether the left is not the smaller.</summary>
    public static bool operator >=(Capacitance left, Capacitance right) => left.Picofarads >= right.Picofarads;

    /// <summary>The value as a technician writes it: <c>104.57 nF</c>, below a nanofarad <c>820 pF</c>.</summary>
    public override string ToString() => Math.Abs(Picofarads) < 1000
        ? string.Create(CultureInfo.InvariantCulture, $"{Picofarads} pF")
        : string.Create(CultureInfo.InvariantCulture, $"{Nanofarads:0.00} nF");
}
