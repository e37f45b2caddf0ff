namespace AutoSweep.Worker.Parts;

/// <summary>What is printed on the parts of one intake: they come out of one bag.</summary>
/// <param name="NominalPicofarads">The printed value in picofarads; none where it is not known.</param>
/// <param name="ToleranceLetter">The printed letter (IEC 60062); none where it is not known.</param>
/// <param name="Dielectric">The dielectric in the shop's words.</param>
/// <param name="RatedVolts">The rated voltage in volts.</param>
public sealed record IntakeLabel(long? NominalPicofarads, string? ToleranceLetter, string? Dielectric, double? RatedVolts);
