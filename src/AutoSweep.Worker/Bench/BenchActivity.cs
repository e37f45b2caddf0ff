namespace AutoSweep.Worker.Bench;

/// <summary>The big states of the bench.</summary>
public enum BenchActivity
{
    /// <summary>Connecting and checking the instruments.</summary>
    Connecting,

    /// <summary>Waiting for a clip: the hands' turn.</summary>
    Waiting,

    /// <summary>An output was recognised and is being read: hands off.</summary>
    Reading,

    /// <summary>The output's magnet is to be moved: the hands' turn.</summary>
    Moving,

    /// <summary>The output is done: take the clip off.</summary>
    Done,

    /// <summary>Something is odd and the person must look.</summary>
    NeedsYou,

    /// <summary>An instrument is missing: the work stands still until it is back.</summary>
    Paused,

    /// <summary>Every planned output is done.</summary>
    Finished,
}
