using System.ComponentModel;
using System.IO.Enumeration;

namespace AutoSweep.Instruments.Meters;

/// <summary>A pattern for a meter's identity.</summary>
public sealed record DriverIdentity
{
    /// <summary>The maker as <c>*IDN?</c> gives it, in any letter case; <c>*</c> stands for any text.</summary>
    [Description("The maker as *IDN? gives it, in any letter case; * stands for any text.")]
    public required string Maker { get; init; }

    /// <summary>The model, likewise.</summary>
    [Description("The model as *IDN? gives it, in any letter case; * stands for any text.")]
    public required string Model { get; init; }

    /// <summary>Whether an identity fits.</summary>
    public bool Matches(InstrumentIdentity identity) => Fits(Maker, identity.Maker) && Fits(Model, identity.Model);

    /// <summary>Maker and model.</summary>
    public override string ToString() => $"{Maker} {Model}";

    private static bool Fits(string pattern, string text) => FileSystemName.MatchesSimpleExpression(pattern, text, ignoreCase: true);
}
