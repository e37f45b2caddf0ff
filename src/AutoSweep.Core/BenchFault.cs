namespace AutoSweep.Core;

/// <summary>The kinds of fault that stop a job until a person has acted. The number is the exit code of a command.</summary>
public enum BenchFault
{
    /// <summary>A file that was given cannot be used: missing, not readable, an unknown or missing field, a value out of range.</summary>
    BadFile = 3,

    /// <summary>An instrument cannot be reached: no such port or address, refused, unplugged.</summary>
    NotReachable = 4,

    /// <summary>An instrument is reached but does not answer, or answers what cannot be read.</summary>
    NoAnswer = 5,

    /// <summary>An instrument answers with another identity than the driver or the job expects.</summary>
    WrongIdentity = 6,

    /// <summary>The calibration file belongs to another fixture, or does not fit this one.</summary>
    WrongCalibration = 7,

    /// <summary>Another AutoSweep works in the job folder.</summary>
    JobInUse = 8,

    /// <summary>The journal cannot be written: disk full, read-only, gone.</summary>
    JournalNotWritten = 9,

    /// <summary>The journal holds a line that cannot be trusted.</summary>
    JournalDamaged = 10,

    /// <summary>The fixture did not do what it was told: a relay that does not follow, a failed self-test.</summary>
    FixtureFault = 11,

    /// <summary>Other programs hold the stock ledger for longer than anyone should.</summary>
    StockInUse = 14,

    /// <summary>The stock does not allow what was asked: a part that is not there, not free, or named twice.</summary>
    StockRefused = 15,

    /// <summary>A stage was asked for before the job is ready for it.</summary>
    StageNotReady = 16,
}
