namespace AutoSweep.Worker.Curves;

/// <summary>What a column of a curve file holds.</summary>
internal enum CurveColumnKind
{
    /// <summary>The output's number.</summary>
    Output,

    /// <summary>The level.</summary>
    Level,

    /// <summary>The tolerance to either side.</summary>
    Tolerance,

    /// <summary>Something that a curve has no use for.</summary>
    Other,
}
