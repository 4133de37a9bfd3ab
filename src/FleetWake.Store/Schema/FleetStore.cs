using FleetWake.Logbook.Entries;
using FleetWake.Store.Alerts;
using FleetWake.Store.Attribution;
using FleetWake.Store.Devices;
using FleetWake.Store.Findings;
using FleetWake.Store.Histories;
using FleetWake.Store.Import;
using FleetWake.Store.Layouts;
using FleetWake.Store.Mail;
using FleetWake.Store.Nodes;
using FleetWake.Store.Operators;
using FleetWake.Store.People;
using FleetWake.Store.Photos;
using FleetWake.Store.Quarantine;
using FleetWake.Store.Records;
using JasperFx;
using JasperFx.Events;
using JasperFx.Events.Daemon;
using JasperFx.Events.Projections;
using JasperFx.MultiTenancy;
using Marten;
using Marten.Events;
using Microsoft.Extensions.DependencyInjection;
using Npgsql;
using Weasel.Core;

namespace FleetWake.Store.Schema;

/// <summary>How the record lies in PostgreSQL. The only place that tells Marten anything.</summary>
public static class FleetStore
{
    /// <summary>The schema that holds everything but the scheduler's tables.</summary>
    public const string SchemaName = "fleetwake";

    /// <summary>Adds the document store; with <paramref name="daemon"/>, this process also folds streams and marks boats.</summary>
    public static IServiceCollection AddFleetStore(this IServiceCollection services, NpgsqlDataSource source, bool daemon)
    {
        services.AddSingleton(source);
        var marten = services.AddMarten(options => Configure(options, source));
        if (daemon) marten.AddAsyncDaemon(DaemonMode.HotCold);
        services.AddSingleton<Recorder>();
        services.AddSingleton<FleetReading>();
        services.AddSingleton<FleetOperators>();
        services.AddFleetPeople();
        services.AddSingleton<FleetDevices>();
        services.AddSingleton<DockPeople>();
        services.AddSingleton<DockPins>();
        services.AddSingleton<DockSignatures>();
        services.AddSingleton<QuarantineBook>();
        services.AddSingleton<EntryNotes>();
        services.AddSingleton<EntryPhotos>();
        services.AddSingleton<BesideBook>();
        services.AddSingleton<FleetPreferences>();
        services.AddSingleton<MailLedger>();
        services.AddSingleton<AlertBook>();
        services.AddSingleton<LayoutBook>();
        services.AddSingleton<MailReading>();
        services.AddSingleton<MailResends>();
        services.AddSingleton<MailBounces>();
        services.AddSingleton<AlertHooks>();
        services.AddSingleton<MailHolds>();
        services.AddSingleton<ImportDrafts>();
        services.AddSingleton<TableImport>();
        return services;
    }

    /// <summary>Adds this node's beat, its watch over the others, and the reading of how the work stands.</summary>
    /// <param name="services">The services.</param>
    /// <param name="settings">What this node says of itself.</param>
    /// <param name="beats">A pool for the beat and the looks at the work alone: a busy node must not look dead, and who asks after it must not take connections from it.</param>
    public static IServiceCollection AddFleetNodes(this IServiceCollection services, NodeSettings settings, NpgsqlDataSource beats)
    {
        services.AddSingleton(settings);
        services.AddSingleton(new NodeBook(beats));
        services.AddSingleton(s => new WorkStateReading(beats, new NodeBook(beats), new MailLedger(s.GetRequiredService<IDocumentStore>(), beats, s.GetRequiredService<TimeProvider>())));
        return services.AddHostedService<NodeWatch>();
    }

    /// <summary>A store outside a host, for the schema command and for tests.</summary>
    public static DocumentStore Open(NpgsqlDataSource source, AutoCreate autoCreate = AutoCreate.None) =>
        DocumentStore.For(options =>
        {
            Configure(options, source);
            options.AutoCreateSchemaObjects = autoCreate;
        });

    private static void Configure(StoreOptions options, NpgsqlDataSource source)
    {
        options.Connection(source);
        options.DatabaseSchemaName = SchemaName;
        options.Events.DatabaseSchemaName = SchemaName;

        // Tables are made by the schema command; several nodes making them lazily race each other.
        options.AutoCreateSchemaObjects = AutoCreate.None;
        options.DisableNpgsqlLogging = true;

        // Words are written by the logbook's own converter; Marten's would come first and write them its way.
        options.UseSystemTextJsonForSerialization(EnumStorage.AsInteger, Casing.CamelCase, json => LogbookJson.Configure(json));

        options.Events.StreamIdentity = StreamIdentity.AsString;
        options.Events.TenancyStyle = TenancyStyle.Conjoined;
        options.Events.AppendMode = EventAppendMode.QuickWithServerTimestamps;
        options.Events.UseListenNotifyForEventAppends = true;

        // Where something was told at all, e.g. a claim, is asked for by the fact's name.
        options.Events.EnableEventTypeIndex = true;
        options.Policies.AllDocumentsAreMultiTenanted();
        foreach (var (type, name) in LogbookJson.StoredNames) options.Events.MapEventType(type, name);

        // A wear total must not be quietly wrong: the daemon stops at what it cannot apply, rather than skip it.
        options.Projections.Errors.SkipApplyErrors = false;
        options.Projections.Errors.SkipSerializationErrors = false;
        options.Projections.Errors.SkipUnknownEvents = false;

        // A process without the daemon is no mistake: another one folds. (AddAsyncDaemon overrides this.)
        options.Projections.AsyncMode = DaemonMode.ExternallyManaged;
        options.Projections.Add<FactLogProjection>(ProjectionLifecycle.Async);
        options.Events.Subscribe(new DirtyBoatSubscription());

        options.Schema.For<FactLog>().DocumentAlias("fact_log");
        options.Schema.For<Receipt>().DocumentAlias("receipt");
        options.Schema.For<StoredFinding>().DocumentAlias("finding");
        options.Schema.For<CurrentFinding>().DocumentAlias("current_finding");
        options.Schema.For<IssuedDigest>().DocumentAlias("issued_digest");
        options.Schema.For<ToldCause>().DocumentAlias("told_cause");
        options.Schema.For<Recipient>().DocumentAlias("recipient");
        options.Schema.For<OwnTemplate>().DocumentAlias("own_template");
        options.Schema.For<OwnTemplateVersion>().DocumentAlias("own_template_version");
        options.Schema.For<LayoutState>().DocumentAlias("layout_state");

        // What is looked up before the operator is known stands outside any operator's rows.
        options.Schema.For<OperatorCard>().DocumentAlias("operator").SingleTenanted();
        options.Schema.For<ApiKey>().DocumentAlias("api_key").SingleTenanted();
        options.Schema.For<UnsubscribeToken>().DocumentAlias("unsubscribe_token").SingleTenanted();
        options.Schema.For<AlertHook>().DocumentAlias("alert_hook").SingleTenanted();
        options.Schema.For<MailHold>().DocumentAlias("mail_hold").SingleTenanted();
        options.Schema.For<ConfirmToken>().DocumentAlias("confirm_token").SingleTenanted();
        options.AddPeople();
        options.Schema.For<PersonPreferences>().DocumentAlias("person_preferences").SingleTenanted();

        foreach (var table in WorkTables.All.Concat(DockTables.All)) options.Storage.ExtendedSchemaObjects.Add(table);
    }
}
