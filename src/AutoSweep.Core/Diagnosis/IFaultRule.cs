namespace AutoSweep.Core.Diagnosis;

/// <summary>Looks for one kind of trouble, or for kinds that must be told from each other.</summary>
internal interface IFaultRule
{
    /// <summary>What the rule finds; empty where the readings do not say enough.</summary>
    IEnumerable<Finding> Find(DiagnosisCase job);
}
