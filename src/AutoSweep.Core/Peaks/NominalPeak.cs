using AutoSweep.Core.Quantities;

namespace AutoSweep.Core.Peaks;

/// <summary>A peak carried over to the nominal mains frequency: what is to be fitted.</summary>
/// <remarks>The motor is synchronous, so a tone is in proportion to the mains, and 1/(2π√(LC)) makes the peak go as the square of the tone's period.</remarks>
/// <param name="Capacitance">The peak at nominal mains.</param>
/// <param name="SdPicofarads">One standard deviation of it in picofarads, the mains' part in it; none where the readings' part is not known.</param>
/// <param name="Scale">The peak at nominal mains over the peak as measured; widths go with it.</param>
/// <param name="MainsSdPicofarads">The mains' part of the standard deviation in picofarads; 0 where a tone was counted.</param>
public sealed record NominalPeak(Capacitance Capacitance, double? SdPicofarads, double Scale, double MainsSdPicofarads)
{
    /// <summary>
    /// How far the mains may be off nominal where nobody counted a tone, as a share: the standard frequency range of ±50 mHz at 50 Hz (Commission
    /// Regulation (EU) 2017/1485, Annex III, continental Europe; from memory). Taken for 60 Hz too, where grids are held no worse (common practice, no source).
    /// </summary>
    public const double StandardFrequencyRange = 0.05 / 50;

    // A limit with nothing known within it is rectangular (JCGM 100:2008, GUM, 4.3.7); the peak goes as the square of the frequency, so its share is twice that.
    private static readonly double MainsShare = 2 * StandardFrequencyRange / Math.Sqrt(3);

    /// <summary>Whether no tone was counted, so that the mains were taken as nominal.</summary>
    public bool IsMainsAssumed => MainsSdPicofarads > 0;

    /// <summary>Carries a peak over.</summary>
    /// <param name="peak">The peak as measured; above 0.</param>
    /// <param name="sdPicofarads">One standard deviation of it in picofarads; none or not finite where it is not known.</param>
    /// <param name="countedHertz">The tone counted at the peak in hertz; 0 where none was.</param>
    /// <param name="nominalHertz">The tone at nominal mains in hertz.</param>
    public static NominalPeak Of(Capacitance peak, double? sdPicofarads, double countedHertz, double nominalHertz)
    {
        var known = sdPicofarads is { } given && double.IsFinite(given) ? sdPicofarads : null;
        var ratio = countedHertz > 0 ? countedHertz / nominalHertz : 1;
        var there = new Capacitance((long)Math.Round(peak.Picofarads * ratio * ratio));
        var scale = (double)there.Picofarads / peak.Picofarads;
        var mains = countedHertz > 0 ? 0 : MainsShare * there.Picofarads;
        return new(there, known is { } sd ? double.Hypot(sd * scale, mains) : null, scale, mains);
    }
}
