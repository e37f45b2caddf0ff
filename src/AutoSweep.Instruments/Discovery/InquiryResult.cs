namespace AutoSweep.Instruments.Discovery;

/// <summary>What came of asking who is at a resource.</summary>
/// <param name="Resource">The resource.</param>
/// <param name="Identity">Who answered; null when nobody did.</param>
/// <param name="Drivers">The drivers that drive such a meter, in order.</param>
/// <param name="Line">For a serial line the settings at which it answered, in words; else empty.</param>
/// <param name="Trouble">Why there is no answer; empty when there is one.</param>
public sealed record InquiryResult(
    string Resource, InstrumentIdentity? Identity, IReadOnlyList<string> Drivers, string Line, string Trouble);
