namespace AutoSweep.Worker.Page.AtBench;

/// <summary>Whose turn it is; each has its colour and its sign, and no two share either.</summary>
public enum BenchTurn
{
    /// <summary>Nobody's: instruments are opened, or nothing goes on.</summary>
    Rest,

    /// <summary>The hands': clip, dial, type.</summary>
    Hands,

    /// <summary>The meter's: hands off.</summary>
    Meter,

    /// <summary>The hands' at a magnet.</summary>
    Magnet,

    /// <summary>An output is done.</summary>
    Done,

    /// <summary>Something is odd.</summary>
    Look,

    /// <summary>An instrument is missing.</summary>
    Missing,
}
