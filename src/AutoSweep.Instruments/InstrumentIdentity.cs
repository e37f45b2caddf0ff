namespace AutoSweep.Instruments;

/// <summary>The answer to <c>*IDN?</c> (IEEE 488.2, 10.14): four fields, of which real instruments sometimes leave some out.</summary>
/// <param name="Maker">Field 1.</param>
/// <param name="Model">Field 2.</param>
/// <param name="Serial">Field 3; "0" where the instrument does not tell.</param>
/// <param name="Firmware">Field 4; "0" where the instrument does not tell.</param>
public sealed record InstrumentIdentity(string Maker, string Model, string Serial, string Firmware)
{
    /// <summary>The four fields as the wire carries them.</summary>
    public override string ToString() => $"{Maker},{Model},{Serial},{Firmware}";
}
