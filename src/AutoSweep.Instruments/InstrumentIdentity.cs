namespace AutoSweep.Instruments;

/// <summary>The answer to <c>*IDN?</c> (IEEE 488.2, 10.14): four fields, of which real instruments sometimes leave some out.</summary>
/// <param name="Maker">Field 1.</param>
/// <param name="Model">Field 2.</param>
/// <param name="Serial">Field 3; "0" where the instrument does not tell.</param>
/// <param name="Firmware">Field 4; "0" where the instrument does not tell.</param>
public sealed record InstrumentIdentity(string Maker, string Model, string Serial, string Firmware)
{
    /// <summary>Reads an answer to <c>*IDN?</c>.</summary>
    /// <returns>Null when it has fewer than two fields, or begins with a number: then it answers another query.</returns>
    public static InstrumentIdentity? TryParse(string reply)
    {
        var fields = reply.Split(',', 4, StringSplitOptions.TrimEntries);
        if (fields.Length < 2 || fields[0].Length == 0 || fields[0][0] == '(' || Scpi.ScpiNumber.Parse(fields[0]) is not null)
            return null;
        return new(fields[0], fields[1], fields.ElementAtOrDefault(2) ?? "0", fields.ElementAtOrDefault(3) ?? "0");
    }

    /// <summary>The four fields as the wire carries them.</summary>
    public override string ToString() => $"{Maker},{Model},{Serial},{Firmware}";
}
