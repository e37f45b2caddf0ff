namespace AutoSweep.Core.Journal;

/// <summary>An entry of an append-only file of checksummed lines.</summary>
public interface INumberedEntry
{
    /// <summary>Its place, from 1, without gaps.</summary>
    long Sequence { get; }

    /// <summary>Whether it says anything at all.</summary>
    bool IsWhole { get; }
}
