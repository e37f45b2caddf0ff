namespace AutoSweep.Worker.Page.Setup;

/// <summary>What a check of one wire came to.</summary>
public enum WireVerdict
{
    /// <summary>It does what it should.</summary>
    Good,

    /// <summary>It can be worked with, but something should be looked at.</summary>
    Look,

    /// <summary>It cannot be worked with.</summary>
    NotGood,

    /// <summary>There is no such wire on this bench: a person does its work.</summary>
    NoWire,
}
