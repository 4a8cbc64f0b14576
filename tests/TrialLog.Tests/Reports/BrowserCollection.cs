namespace TrialLog.Tests.Reports;

[CollectionDefinition(Name)]
public class BrowserCollection : ICollectionFixture<Browser>
{
    public const string Name = "pages in a browser";
}
