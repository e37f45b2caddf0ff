namespace AutoSweep.Worker.Page.AtBench;

/// <summary>The steps of a job in their usual order.</summary>
public enum JobStepKind
{
    /// <summary>Tone, level and noise of every output.</summary>
    Survey,

    /// <summary>The peaking capacitance of every filtered output.</summary>
    Sweep,

    /// <summary>The capacitors that came off are measured for the record.</summary>
    OldSet,

    /// <summary>Parts of the stock are chosen for the outputs.</summary>
    Match,

    /// <summary>The parts are measured and soldered in.</summary>
    Fit,

    /// <summary>The level of every fitted output against its prediction.</summary>
    Check,

    /// <summary>The levels are brought onto their curve at the magnets.</summary>
    Levels,

    /// <summary>Every output once more, as it is handed over.</summary>
    AsLeft,

    /// <summary>The record for the shop and the customer.</summary>
    Record,
}
