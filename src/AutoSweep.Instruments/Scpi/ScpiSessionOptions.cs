namespace AutoSweep.Instruments.Scpi;

/// <summary>How one instrument's wire behaves.</summary>
public sealed record ScpiSessionOptions
{
    /// <summary>What ends a message to the instrument.</summary>
    /// <value>Default LF (IEEE 488.2, 7.5).</value>
    public string Terminator { get; init; } = "\n";

    /// <summary>The last character of a reply.</summary>
    /// <value>Default LF; a CR before it is dropped. CR for an instrument that sends only that.</value>
    public char ReplyTerminator { get; init; } = '\n';

    /// <summary>The least time between an exchange and the next message.</summary>
    /// <value>Default zero.</value>
    public TimeSpan Pause { get; init; }

    /// <summary>Time-outs and retries.</summary>
    public ExchangeOptions Exchange { get; init; } = new();

    /// <summary>The query that reads one entry of the error queue.</summary>
    /// <value>Default <c>SYST:ERR?</c> (SCPI-1999, 21.8); null for an instrument that has none.</value>
    public string? ErrorQuery { get; init; } = "SYST:ERR?";
}
