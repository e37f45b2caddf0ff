using System.IO.Enumeration;

namespace AutoSweep.Instruments.Meters;

/// <summary>A pattern for a meter's identity.</summary>
/// <param name="Maker">The maker as <c>*IDN?</c> gives it, in any letter case; <c>*</c> stands for any text.</param>
/// <param name="Model">The model, likewise.</param>
public sealed record DriverIdentity(string Maker, string Model)
{
    /// <summary>Whether an identity fits.</summary>
    public bool Matches(InstrumentIdentity identity) => Fits(Maker, identity.Maker) && Fits(Model, identity.Model);

    /// <summary>Maker and model.</summary>
    public override string ToString() => $"{Maker} {Model}";

    private static bool Fits(string pattern, string text) => FileSystemName.MatchesSimpleExpression(pattern, text, ignoreCase: true);
}
