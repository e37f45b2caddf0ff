namespace AutoSweep.Instruments.Links;

/// <summary>How to open a link.</summary>
/// <param name="Serial">The settings of a serial line; other links ignore them.</param>
public sealed record LinkSettings(SerialSettings Serial)
{
    /// <summary>How long a connection may take to come about.</summary>
    /// <value>Default 5 s: two lost SYN packets (RFC 6298 retransmits after 1 s and 2 s more).</value>
    public TimeSpan ConnectTimeout { get; init; } = TimeSpan.FromSeconds(5);

    /// <summary>The last character of a reply. A link on which the end of a message is marked otherwise (END, EOM) adds it where the
    /// instrument leaves it out; one through VISA ends a read at it.</summary>
    /// <value>Default LF (IEEE 488.2, 8.5).</value>
    public char ReplyTerminator { get; init; } = '\n';
}
