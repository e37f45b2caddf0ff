namespace AutoSweep.Core.Magnets;

/// <summary>How the level falls off with the gap, before a rod has told it itself.</summary>
/// <remarks>
/// The field of a periodic edge of pitch p falls off as exp(-2·pi·gap/p) (the field law of toothed and magnetised surfaces; the same law gives magnetic
/// tape its spacing loss of 54.6 dB a wavelength), so a millimetre costs 54.6/p dB. Coarse wheels follow the mean gap as well and are steeper
/// than that. No page with measured rods was found: hence a wide prior, which two readings replace.
/// </remarks>
public static class FieldLaw
{
    /// <summary>Decibels a pitch: 20·log10(exp(2·pi)).</summary>
    public const double DecibelsPerPitch = 54.5751;

    /// <summary>Diameter of a wheel in millimetres: two inches (published descriptions of the classic generator).</summary>
    public const double WheelMillimetres = 50.8;

    // What the mean gap adds on coarse wheels: a guess of the right order for a field that falls with the gap (1/g at 3 mm; no source).
    private const double MeanGapDecibels = 3;

    /// <summary>One standard deviation of a rod's slope about the expected one, as a natural logarithm: a factor of two either way.</summary>
    public static double Spread { get; } = Math.Log(2);

    /// <summary>Decibels a millimetre by the field law alone.</summary>
    /// <param name="teeth">Teeth of the wheel.</param>
    public static double Law(int teeth) => DecibelsPerPitch * teeth / (Math.PI * WheelMillimetres);

    /// <summary>Decibels a millimetre to be expected of a rod.</summary>
    /// <param name="teeth">Teeth of its wheel.</param>
    public static double Expected(int teeth) => Law(teeth) + MeanGapDecibels;
}
