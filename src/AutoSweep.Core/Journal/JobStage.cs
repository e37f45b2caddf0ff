namespace AutoSweep.Core.Journal;

/// <summary>The parts of a job that read the bench.</summary>
public enum JobStage
{
    /// <summary>Every output's tone, level and noise.</summary>
    Survey,

    /// <summary>The peaking capacitance of every filtered output.</summary>
    Sweep,

    /// <summary>The level of every fitted output against what its sweep predicted.</summary>
    Check,

    /// <summary>The levels that are still off the target curve are brought into its band at the magnets.</summary>
    Level,

    /// <summary>Every output's tone, level and noise once more, as the generator is handed over.</summary>
    AsLeft,
}
