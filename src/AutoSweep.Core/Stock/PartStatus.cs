namespace AutoSweep.Core.Stock;

/// <summary>What has become of a part.</summary>
public enum PartStatus
{
    /// <summary>In its bin, free for any job.</summary>
    Available,

    /// <summary>In its bin, promised to one output of one job.</summary>
    Reserved,

    /// <summary>Soldered in.</summary>
    Fitted,

    /// <summary>Thrown away, and kept in the ledger for the record.</summary>
    Scrapped,
}
