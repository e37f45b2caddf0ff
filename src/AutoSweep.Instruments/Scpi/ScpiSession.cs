namespace AutoSweep.Instruments.Scpi;

/// <summary>Messages and replies of one SCPI instrument over one link.</summary>
public sealed class ScpiSession;
