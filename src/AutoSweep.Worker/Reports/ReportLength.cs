namespace AutoSweep.Worker.Reports;

/// <summary>For whom a record is printed.</summary>
public enum ReportLength
{
    /// <summary>For the shop: every figure, and the journal entry behind it.</summary>
    Shop,

    /// <summary>For the customer: what was found, what was fitted, how level it is now.</summary>
    Customer,
}
