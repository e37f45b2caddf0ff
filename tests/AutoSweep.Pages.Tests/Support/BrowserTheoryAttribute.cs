namespace AutoSweep.Pages.Tests.Support;

/// <summary>A theory that needs a browser, where it is installed.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class BrowserTheoryAttribute : TheoryAttribute
{
    public BrowserTheoryAttribute() => Skip = Tools.Missing;
}
