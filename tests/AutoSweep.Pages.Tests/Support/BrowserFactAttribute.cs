namespace AutoSweep.Pages.Tests.Support;

/// <summary>A fact that needs a browser, where it is installed.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = Tools.Missing;
}
