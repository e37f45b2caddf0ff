namespace AutoSweep.Instruments.Scpi;

/// <summary>The time-outs and retries of an instrument's exchanges, all in one place.</summary>
/// <remarks>Defaults are bench practice for sockets and serial lines, no published source.</remarks>
public sealed record ExchangeOptions
{
    /// <summary>How long an instrument may take to answer an ordinary query.</summary>
    /// <value>Default 2 s, the VISA default for the attribute VI_ATTR_TMO_VALUE (VPP-4.3). Measurements add their own time.</value>
    public TimeSpan QueryTimeout { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>How often a query is asked again after silence or an answer that cannot be read.</summary>
    /// <value>Default 2; 0 to 10. Commands are never repeated.</value>
    public int Retries { get; init; } = 2;

    /// <summary>How long the wire must be silent before a resynchronisation trusts that nothing is on its way.</summary>
    /// <value>Default 200 ms: twenty characters even at 1200 baud.</value>
    public TimeSpan QuietTime { get; init; } = TimeSpan.FromMilliseconds(200);

    /// <summary>How long a resynchronisation waits for silence before it asks all the same.</summary>
    /// <value>Default 2 s.</value>
    public TimeSpan QuietLimit { get; init; } = TimeSpan.FromSeconds(2);
}
