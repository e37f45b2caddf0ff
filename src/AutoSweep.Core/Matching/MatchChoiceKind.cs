namespace AutoSweep.Core.Matching;

/// <summary>What a choice of a match stands for.</summary>
internal enum MatchChoiceKind
{
    /// <summary>Parts.</summary>
    Parts,

    /// <summary>No parts: the stock does not suffice.</summary>
    Nothing,

    /// <summary>All combinations that were not kept.</summary>
    Others,
}
